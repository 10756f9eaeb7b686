using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Refitting;

/// <summary>A test spelled out: its energies come back, its steps are done, the energies are isolated again, the last first.</summary>
internal static class TestActions
{
    /// <summary>The actions of a test; any other action is itself.</summary>
    /// <param name="draft">The action as the order was sought with it.</param>
    /// <param name="layout">A state of the machine, for its variables.</param>
    public static ImmutableArray<ActionDraft> Of(ActionDraft draft, MachineState layout)
    {
        if (draft.Origin is not RuledTest { Rule: var test })
        {
            return [draft];
        }

        var state = layout.Copy();
        var powered = test.InOrderOfReturn();
        foreach (var energy in powered)
        {
            state[new StateVariable(StateKind.Live, energy.Index)] = (int)EnergyState.Dead;
        }

        var actions = ImmutableArray.CreateBuilder<ActionDraft>();
        foreach (var energy in powered)
        {
            actions.Add(Switch(TestNeeds.Restore(test, energy), test, state));
        }

        foreach (var step in test.Steps)
        {
            actions.Add(new ActionDraft(new ActionRequest(step.Verb, null) { Conditions = step.Conditions }, new TestStep(test, step), [], []));
        }

        foreach (var energy in test.InOrderOfIsolation())
        {
            actions.Add(Switch(TestNeeds.Isolate(energy), test, state));
        }

        return actions.ToImmutable();
    }

    private static ActionDraft Switch(ActionRequest request, TestRule test, MachineState state)
    {
        var changes = ActionEffect.On(state, request);
        state.Apply(changes);
        return new ActionDraft(request, new TestStep(test, null), [], changes);
    }
}
