using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Refitting;

/// <summary>
/// The exact reverse of a strip: the inverse of each of its actions, last first, without what is discarded. What was propped when it came
/// out is propped again before it goes in, and what a rule has go in finger-tight gets its torque in a step of its own.
/// </summary>
internal sealed class InverseList
{
    /// <summary>Reverses a strip.</summary>
    public InverseList(StripRun strip)
    {
        var inverses = ImmutableArray.CreateBuilder<Inverse>(strip.Actions.Length);
        for (var i = strip.Actions.Length - 1; i >= 0; i--)
        {
            var action = strip.Actions[i];
            if (action.Changes.IsEmpty || ActionTable.Row(action.Verb).Inverse is not { } verb || !GoesBack(action.Target!, strip))
            {
                continue;
            }

            if (action.Changes is [_, { Variable.Kind: StateKind.Propped } lost])
            {
                inverses.Add(PropAgain(action, lost, strip));
            }

            inverses.Add(Undo(action, verb, strip));
        }

        All = SnugHalves.Split(inverses.DrainToImmutable(), strip);
    }

    /// <summary>The inverses, in order.</summary>
    public ImmutableArray<Inverse> All { get; }

    /// <summary>The first and the last place of an action; null where the refit has none such.</summary>
    public (int First, int Last)? PlaceOf(RefitAnchor action)
    {
        (int First, int Last)? place = null;
        for (var i = 0; i < All.Length; i++)
        {
            if (All[i].Request.IsNamedBy(action))
            {
                place = (place?.First ?? i, i);
            }
        }

        return place;
    }

    /// <summary>The part at either end of a joint that is discarded, so that the joint cannot be closed again.</summary>
    public static Part? LostEnd(MachineItem item, StripRun strip) =>
        strip.Discarded.Count > 0 && item is Joint { Role: not JointRole.Cover } joint
            ? Assemblies.BelowTheCommonPart(joint).FirstOrDefault(strip.Discarded.Contains)
            : null;

    private static bool GoesBack(MachineItem item, StripRun strip) => !strip.Discarded.Contains(item) && LostEnd(item, strip) is null;

    private static Inverse Undo(PerformedAction action, Verb verb, StripRun strip)
    {
        var change = action.Changes[0];
        var value = action.Target is Joint ? action.Count : change.Before;
        var origin = new InverseOf(action);
        return new Inverse(
            new ActionRequest(verb, action.Target, value) { Conditions = origin.Conditions, Open = AllowedOpen.At(strip.Procedure, verb, action.Target) },
            origin,
            action,
            [new StateChange(change.Variable, change.After, change.Before)]);
    }

    private static Inverse PropAgain(PerformedAction removal, StateChange lost, StripRun strip)
    {
        var support = strip.Actions.Last(action => action.Number < removal.Number && action.Verb == Verb.Support && action.Target == removal.Target);
        var origin = new PropAgain(support, removal);
        return new Inverse(
            new ActionRequest(Verb.Support, removal.Target) { Conditions = origin.Conditions },
            origin,
            removal,
            [new StateChange(lost.Variable, lost.After, lost.Before)]);
    }
}

/// <summary>The inverse of an action.</summary>
/// <param name="Request">The inverse.</param>
/// <param name="Origin">Where it comes from.</param>
/// <param name="Undoes">The action.</param>
/// <param name="Reversals">What the inverse changes.</param>
internal sealed record Inverse(ActionRequest Request, ActionOrigin Origin, PerformedAction Undoes, ImmutableArray<StateChange> Reversals)
    : CausalStep([], Reversals);
