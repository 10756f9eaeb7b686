using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using CsCheck;
using ProcScript.Analysis;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;
using ProcScript.Cards.Tests.Samples;
using ProcScript.Model.Sources;

namespace ProcScript.Cards.Tests.Paper;

/// <summary>Each step, count, torque, alert, reading, tick and bag of a plan stands on paper once, where it belongs; other places refer to it.</summary>
public sealed partial class EachThingOnceTests
{
    public static TheoryData<string> Jobs => [.. DemoLibrary.Plans.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Each_thing_of_a_demo_pack_stands_there_once(string job) => Assert.Empty(Faults(Page(DemoLibrary.Plans[job]), DemoLibrary.Plans[job]));

    /// <summary>The same in a second language: what is planned there is what is planned in English, and all of it is printed.</summary>
    [Theory]
    [MemberData(nameof(Jobs))]
    public void Each_thing_of_a_demo_pack_stands_there_once_in_German(string job)
    {
        var (plan, english) = (DemoLibrary.GermanPlans[job], DemoLibrary.Plans[job]);

        Assert.Equal("de", plan.Language);
        Assert.Empty(Faults(Page(plan), plan));
        foreach (var (told, step) in SamplePlan.Steps(plan).Zip(SamplePlan.Steps(english)))
        {
            Assert.Equal(Sizes(step), Sizes(told));
        }

        Assert.Equal(SamplePlan.Steps(english).Count(), SamplePlan.Steps(plan).Count());
        Assert.Equal(Lists(english), Lists(plan));

        static (int, string, int, int, int, int, int, int, int) Sizes(PlanStep step) =>
            (step.Number, step.Verb, step.Count, step.Tools.Length, step.Ppe.Length, step.Alerts.Length, step.TorqueStages.Length, step.Checks.Length, step.Ticks.Length);

        static (int, int, int, int, int, int) Lists(Plan plan) =>
            (plan.Tools.Length, plan.Ppe.Length, plan.Orders.Length, plan.Consumables.Length, plan.Bags.Length, plan.Energies.Length);
    }

    [Fact]
    public void Each_thing_of_any_pack_stands_there_once()
    {
        var (packs, wanted) = (0, Depth.Of(60));
        AnyProcedure.Gen.Sample(
            text =>
            {
                foreach (var plan in PlansOf(text))
                {
                    Assert.Empty(Faults(Page(plan), plan));
                    Interlocked.Increment(ref packs);
                }
            },
            iter: wanted);
        Assert.True(packs * 3 > wanted * 2, $"only {packs} packs");
    }

    /// <summary>A reader is no good that finds nothing where a thing is missing or there twice.</summary>
    [Slow]
    [Theory]
    [InlineData(".step")]
    [InlineData(".torque")]
    [InlineData(".step .alert")]
    [InlineData(".step .reading")]
    [InlineData(".step input.main")]
    [InlineData(".act b")]
    [InlineData("td.count:not(:empty)")]
    [InlineData("td.bag b")]
    [InlineData(".label")]
    [InlineData(".label li")]
    [InlineData(".photo")]
    [InlineData(".new")]
    [InlineData("#make-safe .blanks:has([data-field$=reading])")]
    [InlineData("#close-out tr:has([data-field^=out-bag])")]
    public void What_is_missing_or_there_twice_is_found(string selector)
    {
        var plan = DemoLibrary.Plans["replace_evaporator"];
        var page = Page(plan);
        var one = page.QuerySelector(selector)!;
        var (parent, next) = (one.ParentElement!, one.NextSibling);

        one.Remove();
        Assert.NotEmpty(Faults(page, plan));
        parent.InsertBefore(one, next);
        Assert.Empty(Faults(page, plan));
        parent.InsertBefore(one.Clone(deep: true), one);
        Assert.NotEmpty(Faults(page, plan));
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Each_step_that_is_named_is_a_link_to_a_step_that_is_there(string job)
    {
        var page = Page(DemoLibrary.Plans[job]);

        foreach (var link in page.QuerySelectorAll("a[href^='#']"))
        {
            Assert.NotNull(page.GetElementById(link.GetAttribute("href")![1..]));
        }

        // What names its own steps is no way to them.
        var named = page.QuerySelectorAll("main *").Where(element => element.Closest("h1, h2, .facts, .hide, a, svg") is null)
            .SelectMany(element => element.ChildNodes.OfType<IText>())
            .Select(text => text.Data)
            .Where(text => StepNumber().IsMatch(text));
        Assert.Empty(named);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Each_card_ends_with_how_it_leaves_the_machine_and_a_place_to_sign(string job)
    {
        var plan = DemoLibrary.Plans[job];
        var page = Page(plan);

        foreach (var card in page.QuerySelectorAll("#before, #make-safe, .strip, .work, .refit, #close-out"))
        {
            var foot = Assert.Single(card.QuerySelectorAll(".card-foot"));
            Assert.Equal(
                ["date", "initials", "notes"],
                foot.QuerySelectorAll("input").Select(field => field.GetAttribute("data-field")![(card.Id!.Length + 1)..]).Order(StringComparer.Ordinal));
            Assert.Equal(card.QuerySelector(".steps") is null ? 0 : 1, foot.QuerySelectorAll(".after").Length);
        }

        // At the end of the job nothing is out, but what never goes back or stays isolated.
        if (plan.Refit is [.., { After: var last }])
        {
            Assert.Equal((0, 0, 0), (last.PartsOut, last.PartsAside, last.Bags.Length));
            Assert.All(plan.Strip.Where(stage => stage.Steps.Any(step => step.Verb == "remove")), stage => Assert.True(stage.After.PartsOut > 0));
        }
    }

    private static IReadOnlyList<string> Faults(IDocument page, Plan plan)
    {
        using var published = JsonDocument.Parse(WorkPack.Json(plan));
        return new PaperReader(page, published.RootElement, PaperWords.Of(plan)).Faults();
    }

    private static IHtmlDocument Page(Plan plan) => new HtmlParser().ParseDocument(WorkPack.Html(plan, PackTemplates.Standard).Text);

    private static IEnumerable<Plan> PlansOf(string text) =>
        LibraryCheck.Run(MemorySourceStore.Of("job.proc", text)).Procedures
            .Where(report => report.IsProven)
            .Select(report => report.CreatePlan()!);

    [GeneratedRegex(@"\b[Ss]teps? \d")]
    private static partial Regex StepNumber();
}
