using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Stripping;

/// <summary>When a control that moves only under power can still be set: before its energy is isolated.</summary>
internal static class PoweredControl
{
    /// <summary>The energy that a control needs live and the step that has isolated it before <paramref name="step"/>; null where none has.</summary>
    public static (Energy Energy, Step Step)? IsolatedBefore(StripRun run, Step step, Control control)
    {
        var needed = control.Conditions
            .Where(condition => condition is { State: NeededState.Live, Phase: not NeedsPhase.Refit })
            .Select(condition => (Energy)condition.Item)
            .ToHashSet();
        var isolated = run.Actions
            .Take(Math.Max(run.FirstActionOf(step), 0))
            .LastOrDefault(action => action is { Verb: Verb.Isolate, Target: Energy energy } && needed.Contains(energy));
        return RefitFinding.Step(isolated) is { } by ? ((Energy)isolated!.Target!, by) : null;
    }

    /// <summary>Whether the control could be set right before <paramref name="isolated"/>: nobody moves it or needs it elsewhere until
    /// <paramref name="step"/>.</summary>
    public static bool CanBeSet(StripRun run, ControlAt need, Step isolated, Step step) => run.Actions
        [run.FirstActionOf(isolated)..run.FirstActionOf(step)]
        .All(action => action.Changes.All(change => change.Variable != need.Variable)
            && action.Needs.All(met => met.Need.Variable != need.Variable || met.Need.IsMetBy(need.Position)));
}
