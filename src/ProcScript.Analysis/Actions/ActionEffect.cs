using ProcScript.Analysis.States;

namespace ProcScript.Analysis.Actions;

/// <summary>What an action does: it sets one variable of its target.</summary>
/// <param name="Kind">The variable.</param>
/// <param name="Value">The value after, from the value before and the action's own.</param>
internal sealed record ActionEffect(StateKind Kind, Func<int, int, int> Value)
{
    /// <summary>The variable that an action changes.</summary>
    public StateVariable Variable(ActionRequest request) => new(Kind, request.Target!.Index);

    /// <summary>What the action changes in a state; the state itself stays.</summary>
    public StateChange On(MachineState state, ActionRequest request)
    {
        var variable = Variable(request);
        return new StateChange(variable, state[variable], Value(state[variable], request.Value));
    }
}
