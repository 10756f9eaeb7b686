using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What a job has opened and not closed again when an energy comes back.</summary>
internal sealed class StillOpen
{
    private readonly StripRun _strip;
    private readonly ImmutableArray<PerformedAction> _actions;
    private readonly MachineState _state;

    private readonly Wordbook _book;

    private StillOpen(StripRun strip, RefitRun refit, Wordbook book) =>
        (_strip, _actions, _state, _book) = (strip, [.. strip.Actions, .. refit.Actions], strip.Start.Copy(), book);

    /// <summary>By the number of each step that restores an energy: what is open then, parts first, then joints, then fluids.</summary>
    public static IReadOnlyDictionary<int, ImmutableArray<PlanOpenItem>> Of(StripRun strip, RefitRun refit, Wordbook book) =>
        new StillOpen(strip, refit, book).Walk();

    private Dictionary<int, ImmutableArray<PlanOpenItem>> Walk()
    {
        var open = new Dictionary<int, ImmutableArray<PlanOpenItem>>();
        foreach (var (at, action) in _actions.Index())
        {
            if (action.Verb == Verb.Restore)
            {
                open.Add(StepList.NumberOf(action.Number), [.. Items(at)]);
            }

            foreach (var change in action.Changes)
            {
                _state.Apply(change);
            }
        }

        return open;
    }

    private IEnumerable<PlanOpenItem> Items(int at)
    {
        var standing = new MachineStanding(_strip, _state, _book);
        foreach (var part in standing.PartsOff)
        {
            yield return Item(part, standing.StateOf(part), StateKind.Place, at);
        }

        foreach (var part in standing.TemporaryOn)
        {
            yield return Item(part, _book.Say("state.still-on"), StateKind.Place, at);
        }

        foreach (var joint in standing.JointsOpen)
        {
            yield return Item(joint, standing.StateOf(joint), _state.Attached(joint) < joint.Count ? StateKind.Attached : StateKind.Slack, at);
        }

        foreach (var fluid in standing.FluidsOut)
        {
            yield return Item(fluid, _book.Say("state.empty"), StateKind.Full, at);
        }
    }

    /// <summary>The item, and the last step from there on that moves it: a proven job leaves it whole then.</summary>
    private PlanOpenItem Item(MachineItem item, string state, StateKind kind, int at)
    {
        var variable = new StateVariable(kind, item.Index);
        var closing = _actions.Skip(at).Last(action => action.Changes.Any(change => change.Variable == variable));
        return new PlanOpenItem(ItemWords.Whole(item), state, StepList.NumberOf(closing.Number));
    }
}
