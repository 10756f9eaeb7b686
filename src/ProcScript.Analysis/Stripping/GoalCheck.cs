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

        var done = actions.Select(action => new NamedAction(action.Verb, action.Target)).ToHashSet();
        var tried = failures.Select(failure => new NamedAction(failure.Step.Verb, failure.Step.Target)).ToHashSet();
        return [.. procedure.Goals.Where(goal => !done.Contains(Meaning(goal)) && !tried.Contains(new NamedAction(goal.Verb, goal.Target)))];
    }

    /// <summary>The action that meets a goal: to strip a part is to remove it.</summary>
    private static NamedAction Meaning(Goal goal) => new(goal.Verb == Verb.Strip ? Verb.Remove : goal.Verb, goal.Target);
}
