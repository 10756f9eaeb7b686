using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Reaching.Search;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Stripping;
using ProcScript.Model;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Reaching;

/// <summary>A way to something that has been performed on the machine, there and back, and proven.</summary>
/// <param name="Nodes">What it brings about, in ascending order of the numbers of the problem.</param>
/// <param name="Strip">The strip.</param>
/// <param name="Refit">The refit.</param>
/// <param name="Cost">What its steps cost.</param>
/// <param name="PropAgain">What of that it costs to prop again what left its prop when it came out: whoever props it and takes it out has to.</param>
internal sealed record ReachWay(ImmutableArray<int> Nodes, StripRun Strip, RefitRun Refit, double Cost, double PropAgain)
{
    /// <summary>Performs what a closure brings about; null where it cannot be worked, or does not go back together.</summary>
    public static ReachWay? Of(Library library, ReachJob job, ReachGraph graph, ReachCosts costs, ClosureProblem problem, int[] closure)
    {
        if (ReachOrder.Of(job.Facts, graph, costs, problem, closure) is not { } actions)
        {
            return null;
        }

        var renewed = closure.Select(node => graph[node]).Where(goal => goal.Kind == FreeingKind.Renewed).Select(goal => goal.Item);
        return Prove(library, job, costs, actions, renewed) is { } way ? way with { Nodes = [.. closure] } : null;
    }

    /// <summary>Performs actions; null where they cannot be done in this order, or not be undone.</summary>
    internal static ReachWay? Prove(Library library, ReachJob job, ReachCosts costs, IEnumerable<ActionRequest> actions, IEnumerable<MachineItem> renewed)
    {
        var strip = StripRunner.Run(new(library, isNoted: false), job.Facts, job.Procedure(actions, renewed));
        if (strip is not { IsSound: true, MissedGoals.IsEmpty: true })
        {
            return null;
        }

        if (RefitDerivation.Attempt(job.Facts, strip) is not { Run: { } refit, Failures.IsEmpty: true })
        {
            return null;
        }

        // The checks of the refit are the same whatever way is taken.
        var steps = StepList.Of(strip, refit).Steps;
        return new ReachWay([], strip, refit, steps.Where(step => step.Target is not null).Sum(costs.Of), PropsAgain(refit, steps).Sum(costs.Of));
    }

    /// <summary>The steps that prop again what left its prop when it came out.</summary>
    internal static IEnumerable<PlannedStep> PropsAgain(RefitRun refit, ImmutableArray<PlannedStep> steps)
    {
        var again = refit.Actions.Where(action => action.Origin is Runs.PropAgain).Select(action => StepList.NumberOf(action.Number)).ToHashSet();
        return steps.Where(step => again.Contains(step.Number));
    }
}
