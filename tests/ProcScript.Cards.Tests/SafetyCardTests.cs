using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

/// <summary>The cards on which a machine is made safe and comes back.</summary>
public sealed class SafetyCardTests
{
    public static TheoryData<string> Jobs => [.. DemoLibrary.Plans.Where(plan => plan.Value.Energies.Length > 0).Select(plan => plan.Key).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_energy_is_made_safe_and_comes_back_line_by_line(string job)
    {
        var plan = DemoLibrary.Plans[job];
        var page = Html(job);

        Assert.Equal(plan.Energies.Select((energy, at) => $"{at + 1}. {energy.Title}"), Heads(page, "#make-safe .energy h3"));
        var back = SamplePlan.Steps(plan).Where(step => step.Verb == "restore").ToList();
        Assert.Equal(back.Select(step => $"Return to service: {step.ItemTitle}"), Heads(page, ".return:not(.isolation) h3"));
        Assert.All(back, step => Assert.Equal(5, page.QuerySelectorAll($".refit #step-{step.Number} > .before:first-child .return .line").Length));
        var again = SamplePlan.Steps(plan).Where(step => step.Verb == "isolate" && step.MakeSafe == 0).ToList();
        Assert.Equal(again.Select(step => $"Make safe again: {step.ItemTitle}"), Heads(page, ".isolation h3"));
        foreach (var step in again)
        {
            // Whoever isolates a second time has all that the first time had: each line with its tick, the lock with its number, the proof with its reading.
            var (first, list) = (plan.Energies.Single(energy => energy.Name == step.Item), page.QuerySelector($"#step-{step.Number} .isolation")!);
            Assert.Equal(first.MakeSafe.Select(line => line.Text), step.Isolation!.Lines.Select(line => line.Text));
            Assert.Equal(first.MakeSafe.Length, list.QuerySelectorAll(".line input[type=checkbox]").Length);
            Assert.Equal((1, 1, 1), (Fields(list, "number"), Fields(list, "name"), Fields(list, "reading")));
            Assert.Contains(first.Limits, list.QuerySelector(".blanks:has([data-field$=reading])")!.TextContent, StringComparison.Ordinal);
            Assert.Null(step.Reading);
        }

        Assert.Equal(plan.Energies.Sum(energy => energy.MakeSafe.Length), page.QuerySelectorAll("#make-safe .line").Length);
        Assert.Equal(
            plan.Energies.Sum(energy => energy.MakeSafe.Count(line => line.IsUsual)),
            page.QuerySelectorAll("#make-safe .line .usual").Length);
        Assert.Equal(plan.Energies.Length, page.QuerySelectorAll("#make-safe input[data-field$=reading]").Length);
        Assert.Equal(2 * plan.Energies.Length, page.QuerySelectorAll("#make-safe input[data-field$=number], #make-safe input[data-field$=name]").Length);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void The_two_documents_say_the_same(string job)
    {
        var plan = DemoLibrary.Plans[job];
        var text = WorkPack.Markdown(plan, PackTemplates.Standard).Text;

        var again = SamplePlan.Steps(plan).Where(step => step.Isolation is not null).ToList();
        Assert.Equal(plan.Energies.Length + again.Count, Count(text, "- [ ] **Verify.**"));
        Assert.Equal(again.Count, Count(text, "**Make safe again: "));
        var back = SamplePlan.Steps(plan).Where(step => step.Verb == "restore").ToList();
        Assert.All(back, step => Assert.True(
            text.IndexOf($"**Return to service: {step.ItemTitle}.**", StringComparison.Ordinal) is > 0 and var list
                && list < text.IndexOf($"- [ ] **{step.Number}. ", StringComparison.Ordinal)));
        Assert.Equal(back.Count, Count(text, "- [ ] **Machine whole.**"));
        Assert.Equal(
            plan.Energies.Sum(energy => energy.MakeSafe.Count(line => line.IsUsual)) + back.Sum(step => step.Return!.Lines.Count(line => line.IsUsual))
                + again.Sum(step => step.Isolation!.Lines.Count(line => line.IsUsual)),
            Count(text, "_(usual)_"));
    }

    [Fact]
    public void No_field_of_a_pack_has_the_name_of_another()
    {
        var fields = Html("renew_element_gasket").QuerySelectorAll("[data-field]").Select(field => field.GetAttribute("data-field"));

        Assert.Empty(fields.GroupBy(field => field).Where(field => field.Count() > 1).Select(field => field.Key));
    }

    [Fact]
    public void The_law_is_cited_with_its_scope()
    {
        foreach (var text in new[] { WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text, WorkPack.Markdown(SamplePlan.Evaporator, PackTemplates.Standard).Text })
        {
            Assert.Contains("leaves out agriculture, construction and maritime work", text, StringComparison.Ordinal);
            Assert.Contains("after seat air", text, StringComparison.Ordinal);
            Assert.Contains("in the order of 29 CFR 1910.147 (e)", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_fluid_has_its_band_and_what_new_parts_change()
    {
        foreach (var text in new[] { WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text, WorkPack.Markdown(SamplePlan.Evaporator, PackTemplates.Standard).Text })
        {
            Assert.Contains("0.83 to 0.87 kg", text, StringComparison.Ordinal);
            Assert.Contains("40 mL of PAG oil with the new evaporator", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_usual_caution_is_marked_in_both_documents()
    {
        var first = SamplePlan.Bare.Strip[0].Steps[0] with { Alerts = [new("warning", "It can fire.") { IsUsual = true }] };
        var plan = SamplePlan.Bare with { Strip = [SamplePlan.Bare.Strip[0] with { Steps = [first] }] };

        Assert.Equal("usual", new HtmlParser().ParseDocument(WorkPack.Html(plan, PackTemplates.Standard).Text).QuerySelector(".alert.warning .usual")!.TextContent);
        Assert.Contains("> _Usual; the manufacturer", WorkPack.Markdown(plan, PackTemplates.Standard).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("restraint", "restraint")]
    [InlineData("high_voltage", "high voltage")]
    [InlineData("refrigerant", "refrigerant")]
    [InlineData("spring", "")]
    public void Licensed_work_is_found_by_its_marks(string word, string sort)
    {
        var plan = SamplePlan.Bare with { Hazards = [new(word, "a mark", "Careful.", ["thing"])] };

        Assert.Equal(sort, string.Join(' ', LicensedWork.In(plan)));
    }

    private static IDocument Html(string job) => new HtmlParser().ParseDocument(WorkPack.Html(DemoLibrary.Plans[job], PackTemplates.Standard).Text);

    private static int Fields(IElement list, string name) => list.QuerySelectorAll($"input[data-field$={name}]").Length;

    private static IEnumerable<string> Heads(IDocument page, string selector) => page.QuerySelectorAll(selector).Select(head => head.TextContent);

    private static int Count(string text, string words) => text.Split(words).Length - 1;
}
