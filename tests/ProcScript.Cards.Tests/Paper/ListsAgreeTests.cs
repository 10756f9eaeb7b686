using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using CsCheck;
using ProcScript.Analysis;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;
using ProcScript.Cards.Tests.Samples;
using ProcScript.Model.Sources;

namespace ProcScript.Cards.Tests.Paper;

/// <summary>What is laid out before the work is what the steps ask for: all of it, and nothing else.</summary>
public sealed class ListsAgreeTests
{
    public static TheoryData<string> Jobs => [.. DemoLibrary.Plans.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void The_lists_of_a_demo_pack_are_what_its_steps_ask_for(string job) => Assert.Empty(new ListReader(Page(DemoLibrary.Plans[job]), PaperWords.English).Faults());

    [Theory]
    [MemberData(nameof(Jobs))]
    public void They_are_in_German_too(string job) => Assert.Empty(new ListReader(Page(DemoLibrary.GermanPlans[job]), PaperWords.German).Faults());

    [Fact]
    public void The_lists_of_any_pack_are_what_its_steps_ask_for()
    {
        var (packs, wanted) = (0, Depth.Of(60));
        AnyProcedure.Gen.Sample(
            text =>
            {
                foreach (var report in LibraryCheck.Run(MemorySourceStore.Of("job.proc", text)).Procedures.Where(report => report.IsProven))
                {
                    Assert.Empty(new ListReader(Page(report.CreatePlan()!), PaperWords.English, tiesNeedCutters: false).Faults());
                    Interlocked.Increment(ref packs);
                }
            },
            iter: wanted);
        Assert.True(packs * 3 > wanted * 2, $"only {packs} packs");
    }

    /// <summary>A reader is no good that takes a list for right which lacks something, or has something that nobody needs.</summary>
    [Slow]
    [Theory]
    [InlineData("replace_evaporator", "#before tr:has([data-field^=tool-])")]
    [InlineData("replace_evaporator", "#before ul.ticks li")]
    [InlineData("replace_evaporator", ".step .tool")]
    [InlineData("replace_evaporator", ".do > .wear")]
    [InlineData("replace_evaporator", ".standing .wear")]
    [InlineData("replace_column_switch", ".step:has(.marking) .tool:last-of-type")]
    public void What_is_missing_is_found(string job, string selector)
    {
        var page = Page(DemoLibrary.Plans[job]);
        page.QuerySelector(selector)!.Remove();

        Assert.NotEmpty(new ListReader(page, PaperWords.English).Faults());
    }

    private static IHtmlDocument Page(Plan plan) => new HtmlParser().ParseDocument(WorkPack.Html(plan, PackTemplates.Standard).Text);
}
