using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Totals;
using ProcScript.Model;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching.Visits;

/// <summary>One or several jobs, performed there and back and proven.</summary>
/// <param name="Strip">The strip with the work.</param>
/// <param name="Refit">The refit.</param>
/// <param name="Cost">How long all of it takes, step after step, in seconds.</param>
/// <param name="Handling">How long it takes of that to take things off, make them safe and put them back: work, checks and tests are the same whatever way is taken.</param>
/// <param name="Besides">
/// How long it takes of that, at the least, to do what comes with any choice of the same steps: to fit what is temporary, and to prop again what left its
/// prop when it came out.
/// </param>
internal sealed record Visit(StripRun Strip, RefitRun Refit, double Cost, double Handling, double Besides)
{
    /// <summary>The places of the jobs in the order in which they are done.</summary>
    public ImmutableArray<int> Order { get; init; } = [];

    /// <summary>
    /// Performs a procedure; null where it is not proven. A control that a later job sets for what is off already cannot be set any more, and need not be:
    /// the proof of what is left says whether it was needed.
    /// </summary>
    public static Visit? Of(Library library, MachineFacts facts, Procedure procedure)
    {
        while (true)
        {
            var strip = StripRunner.Run(new(library, isNoted: false), facts, procedure);
            if (strip.Failures.OfType<ConditionFails>().Select(failure => failure.Step).FirstOrDefault(step => step is { Verb: Verb.Set, WhereNeeded: not null }) is not { } useless)
            {
                return Of(facts, strip);
            }

            var without = procedure.Stages.Select(stage => stage with { Steps = stage.Steps.RemoveAll(step => ReferenceEquals(step, useless)) }).ToImmutableArray();
            if (without.Sum(stage => stage.Steps.Length) == procedure.Stages.Sum(stage => stage.Steps.Length))
            {
                return null;
            }

            procedure = procedure.With(without);
        }
    }

    private static Visit? Of(MachineFacts facts, StripRun strip)
    {
        if (strip is not { IsSound: true, MissedGoals.IsEmpty: true } || RefitDerivation.Attempt(facts, strip) is not { Run: { } refit, Failures.IsEmpty: true })
        {
            return null;
        }

        var steps = StepList.Of(strip, refit).Steps;
        var temporary = steps.Where(step => step.Target is { IsTemporary: true } && IsHandling(step)).DistinctBy(step => (step.Phase, step.Verb, step.Target));
        return new Visit(strip, refit, steps.Sum(Time), steps.Where(IsHandling).Sum(Time), ReachWay.PropsAgain(refit, steps).Concat(temporary).Sum(Time));

        static double Time(PlannedStep step) => StepTime.Of(step).Duration;
    }

    private static bool IsHandling(PlannedStep step) =>
        step is { Target: not null, Test: 0, Verb: not Verb.Retorque } && ActionTable.Row(step.Verb).Phase != ActionPhase.Work;
}
