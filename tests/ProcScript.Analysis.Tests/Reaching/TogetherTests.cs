using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Reaching;
using ProcScript.Analysis.Tests.Demo;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>Several jobs of the demo library in one visit.</summary>
public sealed class TogetherTests
{
    /// <summary>Every so many pairs in a plain run.</summary>
    private const int Apart = 5;

    [Fact]
    public void Two_jobs_on_one_machine_never_take_longer_than_one_after_the_other_and_nothing_comes_off_twice()
    {
        var pairs = DemoLibrary.Report.Library.Procedures.GroupBy(procedure => procedure.Machine.Name, procedure => procedure.Job, StringComparer.Ordinal)
            .SelectMany(machine => Pairs([.. machine.Distinct(StringComparer.Ordinal)]))
            .Where((_, place) => Depth.IsTaken(place, Apart))
            .ToList();
        var (joined, proved, refused) = (0, 0, new List<string>());
        foreach (var (one, other) in pairs)
        {
            TogetherReport report;
            try
            {
                report = LibraryTogether.Find(DemoLibrary.Report.Library, DemoLibrary.Report.Settings, [one, other]);
            }
            catch (ReachRefusedException refusal)
            {
                refused.Add($"{one}, {other}: {refusal.Message}");
                continue;
            }

            joined++;
            Assert.True(report.Cost <= report.Separate, $"{one}, {other}: {report.Cost} s instead of {report.Separate} s");
            Assert.Equal(report.Separate - report.Cost, report.Saved);
            Assert.True(report.Bound <= report.Cost, $"{one}, {other}");
            proved += report.IsCheapest ? 1 : 0;
            var removed = Steps(report.Plan).Where(step => step.Verb == "remove").Select(step => step.Item).ToList();
            Assert.Equal(removed.Distinct(StringComparer.Ordinal), removed);
        }

        Assert.True(refused.Count * 5 <= joined, string.Join('\n', refused));
        // What sets controls to and fro in many steps is left open by some seconds.
        Assert.True(proved * 4 >= joined * 3, $"only {proved} of {joined} were proved the quickest");
        TestContext.Current.SendDiagnosticMessage($"{joined} pairs joined, {proved} proved the quickest, {refused.Count} refused\n{string.Join('\n', refused)}");
    }

    private static IEnumerable<PlanStep> Steps(Plan plan) => plan.Strip.SelectMany(stage => stage.Steps);

    private static IEnumerable<(string One, string Other)> Pairs(IReadOnlyList<string> jobs) =>
        from one in Enumerable.Range(0, jobs.Count)
        from other in Enumerable.Range(one + 1, jobs.Count - one - 1)
        select (jobs[one], jobs[other]);
}
