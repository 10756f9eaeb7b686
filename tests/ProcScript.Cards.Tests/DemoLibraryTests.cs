using AngleSharp.Html.Parser;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

/// <summary>The packs of the demo library say all that their plans say.</summary>
public sealed class DemoLibraryTests
{
    public static TheoryData<string> Jobs => [.. DemoLibrary.Plans.Keys.Order(StringComparer.Ordinal)];

    [Fact]
    public void There_are_jobs_on_every_demo_machine() =>
        Assert.Equal(4, DemoLibrary.Plans.Values.Select(plan => plan.Machine).Distinct(StringComparer.Ordinal).Count());

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_step_is_there_with_its_alerts_before_it(string job)
    {
        var plan = DemoLibrary.Plans[job];

        var html = WorkPack.Html(plan, PackTemplates.Standard);
        var markdown = WorkPack.Markdown(plan, PackTemplates.Standard);

        Assert.Empty(html.Faults);
        Assert.Empty(markdown.Faults);
        var document = new HtmlParser().ParseDocument(html.Text);
        var rows = document.QuerySelectorAll("tbody.step");
        Assert.Equal(SamplePlan.Steps(plan).Select(step => $"step-{step.Number}"), rows.Select(row => row.Id));
        foreach (var (step, row) in SamplePlan.Steps(plan).Zip(rows))
        {
            // The count stands in a column of its own.
            var words = SamplePlan.Uncounted(step.Text, step.Count);
            Assert.Equal(words == step.Text ? "" : $"{step.Count} ×", row.QuerySelector(".count")!.TextContent);
            Assert.StartsWith(words, row.QuerySelector(".do > .act")!.TextContent.Trim(), StringComparison.Ordinal);
            Assert.Equal(step.Alerts.Select(alert => alert.Word.ToUpperInvariant()), row.QuerySelectorAll("tr.before .alert .word").Select(word => word.TextContent.Trim()));
            Assert.Equal(1 + (step.Alerts.Length > 0 ? 1 : 0) + (step.Return is not null ? 1 : 0) + (step.Isolation is not null ? 1 : 0), row.Children.Length);
            Assert.Contains($"- [ ] **{step.Number}. ", markdown.Text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Nothing_is_printed_that_only_templates_know(string job)
    {
        var document = new HtmlParser().ParseDocument(WorkPack.Html(DemoLibrary.Plans[job], PackTemplates.Standard).Text);

        // A value with parts of its own comes out as {key: "…"} where a template takes the whole for one of them.
        Assert.All(document.QuerySelectorAll("main, section"), section => Assert.DoesNotMatch(@"\{\s*\w+:|\{\{|\}\}", section.TextContent));
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_bag_has_a_label_with_its_count(string job)
    {
        var plan = DemoLibrary.Plans[job];

        var labels = new HtmlParser().ParseDocument(WorkPack.Html(plan, PackTemplates.Standard).Text).QuerySelectorAll(".label");

        Assert.Equal(
            plan.Bags.Select(bag => $"Bag {bag.Number}{(bag.Name.Length > 0 ? $": {bag.Name}" : "")}{(bag.Side.Length > 0 ? $" {bag.Side}" : "")}"),
            labels.Select(label => label.QuerySelector("h3")!.TextContent));
        Assert.Equal(
            plan.Bags.SelectMany(bag => bag.Contents).Select(line => $"{line.Count} × {line.Title}"),
            labels.SelectMany(label => label.QuerySelectorAll("li")).Select(line => line.TextContent.Split([", ", "; "], 2, StringSplitOptions.None)[0]));
    }
}
