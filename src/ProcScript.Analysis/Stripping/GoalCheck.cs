using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>Whether what was done is what the procedure is for.</summary>
internal static class GoalCheck
{
    /// <summary>The goals that no action meets.</summary>
    public static ImmutableArray<Goal> Missed(
        Procedure procedure,
        ImmutableArray<PerformedAction> actions,
        IReadOnlyCollection<StripFailure> failures)
    {
        if (procedure.Goals.IsEmpty)
        {
            return [];
        }

        var open = procedure.Goals.Select(Meaning).ToHashSet();
        foreach (var action in actions)
        {
            open.Remove(new NamedAction(action.Verb, action.Target));
        }

        // What was tried and failed is told already.
        open.ExceptWith(failures.Select(failure => new NamedAction(failure.Step.Verb, failure.Step.Target)).Select(Meaning));
        return [.. procedure.Goals.Where(goal => open.Contains(Meaning(goal)))];
    }

    /// <summary>The action that meets a goal: to strip a part is to remove it.</summary>
    private static NamedAction Meaning(NamedAction action) => action.Verb == Verb.Strip ? action with { Verb = Verb.Remove } : action;

    private static NamedAction Meaning(Goal goal) => Meaning(new NamedAction(goal.Verb, goal.Target));
}
