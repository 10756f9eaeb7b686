using CsCheck;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Reaching;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Analysis.Tests.Properties;
using ProcScript.Analysis.Totals;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>The way back from the middle of a job.</summary>
public sealed class BackTests
{
    /// <summary>Every so many steps of the demo jobs in a plain run.</summary>
    private const int Apart = 11;

    private const double Rounding = 1e-6;

    [Fact]
    public void From_every_step_of_every_demo_job_there_is_a_proven_way_back_that_is_never_longer_than_the_derived_one()
    {
        var (ways, place) = (0, 0);
        foreach (var procedure in DemoLibrary.Report.Procedures)
        {
            var facts = new MachineFacts(procedure.Procedure.Machine) { Settings = DemoLibrary.Report.Settings.For(procedure.Procedure.Declared.Path) };
            var whole = StripRunner.Run(new(DemoLibrary.Report.Library, isNoted: false), facts, procedure.Procedure);
            for (var after = 1; after <= whole.Actions.Length; after++)
            {
                if (Depth.IsTaken(place++, Apart))
                {
                    AssertProven(facts, whole, after, $"{procedure.Procedure.Job} after {after}");
                    ways++;
                }
            }
        }

        Assert.True(ways > Depth.Of(1_000, few: 100), $"only {ways} ways back were asked for");
    }

    [Fact]
    public void From_the_last_step_the_way_back_is_never_longer_than_the_refit_of_the_job()
    {
        foreach (var procedure in DemoLibrary.Report.Procedures.DistinctBy(one => one.Procedure.Name))
        {
            var (strip, refit) = (procedure.Outcome.Strip!, procedure.Outcome.Refit!);
            var before = StepList.Of(strip, refit).Steps.Where(step => step.Phase == PlanPhase.Refit).Sum(step => StepTime.Of(step).Duration);
            var back = LibraryBack.Find(DemoLibrary.Report.Library, DemoLibrary.Report.Settings, procedure.Procedure, strip.Actions.Length);

            Assert.True(back.Cost <= before + Rounding, $"{procedure.Procedure.Job}: {back.Cost} s instead of {before} s");
            Assert.True(back.Bound <= back.Cost && back.Cost <= back.DerivedCost, procedure.Procedure.Job);
        }
    }

    [Fact]
    public void From_every_step_of_random_jobs_there_is_a_proven_way_back_that_is_never_longer_than_the_derived_one()
    {
        var (ways, none) = (0, 0);
        Sample.Seeds(6).Sample(
            seed =>
            {
                var sample = Sample.Of(seed, steps: 12);
                if (!sample.Checked.Only.IsProven)
                {
                    return;
                }

                for (var after = 1; after <= sample.Strip.Actions.Length; after++)
                {
                    var facts = new MachineFacts(sample.Machine);
                    if (new HalfStripped(facts, sample.Strip, after).Derive() is null)
                    {
                        Interlocked.Increment(ref none);
                        continue;
                    }

                    AssertProven(facts, sample.Strip, after, sample.Text);
                    Interlocked.Increment(ref ways);
                }
            },
            iter: Depth.Of(400, few: 40));
        TestContext.Current.SendDiagnosticMessage($"{ways} ways back, {none} without");
        Assert.True(ways > 50, $"only {ways} ways back were found");
        Assert.True(none * 10 < ways, $"from {none} steps there was none, from {ways} there was one");
    }

    private static void AssertProven(MachineFacts facts, StripRun whole, int after, string told)
    {
        var half = new HalfStripped(facts, whole, after);
        var derived = half.Derive();
        Assert.True(derived is not null, $"{told}: no way back");
        var best = half.Shortest(derived!);

        Assert.True(best.Cost <= derived!.Cost, told);
        Assert.True(HalfStripped.Bound(best) <= best.Cost + Rounding, told);
        Assert.False(RefitProof.Failures(new MachineFacts(facts.Machine), best.Strip, best.Refit.Actions).Any(), told);
    }
}
