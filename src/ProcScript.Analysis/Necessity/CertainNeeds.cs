using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Necessity;

/// <summary>
/// Which lines a run surely cannot lose, without trying: the changes of one variable are gone through without those of the line,
/// and something that stays lacks what it needs. A line that is not found here may still be needed; that takes a trial.
/// </summary>
internal sealed class CertainNeeds
{
    private readonly StripRun _run;
    private readonly Dictionary<StateVariable, List<Event>> _events = [];

    private CertainNeeds(StripRun run, StepUnits units)
    {
        _run = run;
        foreach (var action in run.Actions)
        {
            var unit = units.Of(action);
            foreach (var met in action.Needs)
            {
                Add(met.Need.Variable, new Event(unit, met.Need, default));
            }

            foreach (var change in action.Changes)
            {
                Add(change.Variable, new Event(unit, null, change));
            }
        }

        foreach (var discard in run.Discards)
        {
            Add(discard.Need.Variable, new Event(units.Of(discard.Step), discard.Need, default));
        }
    }

    /// <summary>Adds the lines that <paramref name="run"/> surely cannot lose.</summary>
    public static void Find(StripRun run, StepUnits units, WorkBudget budget, HashSet<int> certain) => new CertainNeeds(run, units).Find(budget, certain);

    private void Find(WorkBudget budget, HashSet<int> certain)
    {
        foreach (var (variable, events) in _events)
        {
            foreach (var unit in events.Where(one => one.Need is null).Select(one => one.Unit).Distinct())
            {
                if (unit >= 0 && !certain.Contains(unit) && budget.Spend(events.Count) && Lacks(variable, events, unit))
                {
                    certain.Add(unit);
                }
            }
        }
    }

    private bool Lacks(StateVariable variable, List<Event> events, int without)
    {
        var value = _run.Start[variable];
        foreach (var one in events)
        {
            if (one.Unit == without)
            {
                continue;
            }

            if (one.Need is null)
            {
                value = variable.Kind is StateKind.Attached or StateKind.Capped ? value + one.Change.After - one.Change.Before : one.Change.After;
            }
            else if (!one.Need.IsMetBy(value) && !HasAlternative(one.Need))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether something else might do: another way of a choice; in the machine instead of on the bench; a joint slack instead of off, or the reverse.</summary>
    private bool HasAlternative(Need need) => need switch
    {
        { Declared.State: NeededState.AnyOf } => true,
        PartOnBench => true,
        JointOff { Joint: var joint } => _events.ContainsKey(new StateVariable(StateKind.Slack, joint.Index)),
        JointSlack { Joint: var joint } => _events.ContainsKey(new StateVariable(StateKind.Attached, joint.Index)),
        _ => false,
    };

    private void Add(StateVariable variable, Event one)
    {
        if (!_events.TryGetValue(variable, out var events))
        {
            _events.Add(variable, events = []);
        }

        events.Add(one);
    }

    /// <summary>A line needs something of a variable, or changes it.</summary>
    private readonly record struct Event(int Unit, Need? Need, StateChange Change);
}
