using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Proving;

/// <summary>
/// The proof: performs the refit, action by action, on the stripped machine, and compares the machine that comes out with the one
/// that came in. It knows the action table and the list of actions, and nothing of how the list was found.
/// </summary>
internal static class RefitProof
{
    /// <summary>What fails; nothing where the refit is proven.</summary>
    /// <param name="facts">The machine.</param>
    /// <param name="strip">The strip.</param>
    /// <param name="actions">The refit, in order.</param>
    public static IEnumerable<RefitFailure> Failures(MachineFacts facts, StripRun strip, ImmutableArray<PerformedAction> actions)
    {
        var state = strip.End.Copy();
        var collector = new NeedCollector(facts, state, NeedsPhase.Refit, strip.Discarded);
        foreach (var action in actions)
        {
            var request = Request(action, strip.Procedure);
            var asked = action.Verb == Verb.Isolate ? collector.Isolating() : collector;
            if (asked.Collect(request).FirstOrDefault(need => !collector.IsMet(need)) is { } lacking)
            {
                return [new Blocked(new RefitStep(new NamedAction(action.Verb, action.Target), action.Origin), lacking)];
            }

            state.Apply(ActionEffect.On(state, request));
        }

        return Compare(strip, state);
    }

    /// <summary>The action as it is asked for.</summary>
    internal static ActionRequest Request(PerformedAction action, Procedure procedure)
    {
        if (action.Origin is TestStep { Step: null, Rule: var test } && action.Target is Energy energy)
        {
            return action.Verb == Verb.Restore ? TestNeeds.Restore(test, energy) : TestNeeds.Isolate(energy);
        }

        var value = action switch
        {
            { Target: Joint } => action.Count,
            { Target: Control } => action.PositionAfter,
            { Changes: [var change] } => change.After,
            _ => 0,
        };
        return new ActionRequest(action.Verb, action.Target, value)
        {
            Conditions = action.Origin.Conditions,
            Open = AllowedOpen.At(procedure, action.Verb, action.Target),
        };
    }

    private static IEnumerable<RefitFailure> Compare(StripRun strip, MachineState end)
    {
        IReadOnlyDictionary<StateVariable, PerformedAction>? last = null;
        foreach (var variable in strip.Start.Differences(end))
        {
            last ??= strip.LastChanges();
            var item = MachineItems.Of(strip.Procedure.Machine, variable);
            if (!strip.Discarded.Contains(item))
            {
                yield return new NotAsBefore(item, variable, strip.Start[variable], end[variable], last.GetValueOrDefault(variable));
            }
        }
    }
}
