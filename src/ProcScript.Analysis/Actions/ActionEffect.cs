using System.Collections.Immutable;
using ProcScript.Analysis.States;

namespace ProcScript.Analysis.Actions;

/// <summary>What an action does to one variable of its target.</summary>
/// <param name="Kind">The variable.</param>
/// <param name="Value">The value after, from the value before and the action's own.</param>
internal sealed record ActionEffect(StateKind Kind, Func<int, int, int> Value)
{
    /// <summary>The sorts of targets that it is about; any where an action has one sort alone.</summary>
    public ActionTargets Of { get; init; } = ActionTargets.Anything;

    /// <summary>Whether it comes along with what the action is about, and so is no change where the variable has that value already.</summary>
    public bool IsByTheWay { get; init; }

    /// <summary>The variable that an action changes.</summary>
    public StateVariable Variable(ActionRequest request) => new(Kind, request.Target!.Index);

    /// <summary>What an action changes in a state, the variable that it is about first; the state itself stays.</summary>
    public static ImmutableArray<StateChange> On(MachineState state, ActionRequest request)
    {
        var effects = ActionTable.Row(request.Verb).Effects;
        switch (effects)
        {
            case []:
                return [];
            case [var only]:
                return [only.Change(state, request)];
            default:
                var changes = ImmutableArray.CreateBuilder<StateChange>(effects.Length);
                foreach (var effect in effects)
                {
                    if ((effect.Of & ActionTarget.Of(request.Target!)) == 0)
                    {
                        continue;
                    }

                    var change = effect.Change(state, request);
                    if (!effect.IsByTheWay || change.Before != change.After)
                    {
                        changes.Add(change);
                    }
                }

                return changes.DrainToImmutable();
        }
    }

    private StateChange Change(MachineState state, ActionRequest request)
    {
        var variable = Variable(request);
        return new StateChange(variable, state[variable], Value(state[variable], request.Value));
    }
}
