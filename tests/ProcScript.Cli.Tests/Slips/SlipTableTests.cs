using ProcScript.Cli.Tests.Cases;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Tests.Slips;

/// <summary>Each usual slip in a clean file gives one finding where it was made, and a fix that leads back to a clean file.</summary>
public sealed class SlipTableTests
{
    private const int LeastSlips = 60;
    private const int LeastMended = 50;

    private static readonly Lazy<IReadOnlyList<SlipOutcome>> Outcomes = new(() => [.. SlipTable.All.AsParallel().AsOrdered().Select(SlipOutcome.Of)]);

    [Fact]
    public void The_table_says_what_the_program_says() => Expected.Compare(SlipTable.Table, SlipTable.Filled(Outcomes.Value));

    [Fact]
    public void The_file_is_clean_and_laid_out_before_the_slip()
    {
        var tree = Syntax.SyntaxTree.Parse(new SourceText("fan.proc", SlipTable.Good), TestContext.Current.CancellationToken);

        Assert.Empty(SlipOutcome.Of(new Slip("", "")).Findings);
        Assert.Equal(SlipTable.Good, Formatter.Format(tree));
    }

    [Fact]
    public void There_are_enough_slips_and_nearly_all_have_a_fix_that_leads_to_a_clean_file()
    {
        Assert.InRange(Outcomes.Value.Select(outcome => outcome.Slip).Distinct().Count(), LeastSlips, int.MaxValue);
        Assert.InRange(Outcomes.Value.Count(outcome => outcome.IsMended), LeastMended, int.MaxValue);
    }

    [Fact]
    public void A_slip_gives_one_finding_on_a_line_that_it_was_made_in() => Assert.Multiple([.. Outcomes.Value.Select(IsOneFindingThere)]);

    [Fact]
    public void No_fix_makes_things_worse() =>
        Assert.Multiple([.. Outcomes.Value.Select(outcome => (Action)(() =>
            Assert.All(outcome.EachFix(), one => Assert.True(one.Left <= outcome.Findings.Length, $"{outcome.Slip}: {one.Fix.Title} leaves {one.Left} findings"))))]);

    private static Action IsOneFindingThere(SlipOutcome outcome) => () =>
    {
        Assert.True(outcome.Findings.Length == 1, $"{outcome.Slip}: {outcome.Says}");
        var (first, last) = outcome.TouchedLines;

        // What is not there at all is missed where the thing begins that lacks it.
        Assert.InRange(outcome.LineOf(outcome.Findings[0]), outcome.Slip.IsLeftOut ? outcome.HeadLine : first, last);
    };
}
