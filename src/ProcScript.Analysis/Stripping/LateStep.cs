using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Stripping;

/// <summary>A step that isolates an energy or empties a fluid, but only after a step that needed it done.</summary>
internal static class LateStep
{
    /// <summary>The first such step after <paramref name="step"/>; null where there is none.</summary>
    public static Step? Find(StripRun run, Step step, NamedAction wanted) => Steps(run)
        .SkipWhile(other => !ReferenceEquals(other, step))
        .FirstOrDefault(other => other.Verb == wanted.Verb && other.Target == wanted.Target);

    /// <summary>
    /// Whether it could stand before <paramref name="step"/>: until its own place nobody changes what it needs, or needs the energy live or
    /// the fluid in.
    /// </summary>
    public static bool CanComeForward(StripRun run, Step late, Step step, StateVariable changed)
    {
        var passed = Steps(run).SkipWhile(other => !ReferenceEquals(other, step)).TakeWhile(other => !ReferenceEquals(other, late)).ToHashSet();
        var needed = late.Target!.Conditions
            .SelectMany(condition => condition.Each)
            .Where(condition => condition.Phase != NeedsPhase.Refit)
            .Select(condition => ClearNeeds.NeedOf(condition).Variable)
            .ToHashSet();
        return run.Actions
            .Where(action => RefitFinding.Step(action) is { } of && passed.Contains(of))
            .All(action => action.Changes.All(change => !needed.Contains(change.Variable))
                && action.Needs.All(met => met.Need.Variable != changed || met.Need.IsMetBy(0)));
    }

    private static IEnumerable<Step> Steps(StripRun run) => run.Procedure.Stages.SelectMany(stage => stage.Steps).Concat(run.Procedure.Work);
}
