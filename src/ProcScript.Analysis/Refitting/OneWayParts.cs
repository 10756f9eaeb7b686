using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Refitting;

/// <summary>Finds what a refit would put back, or leave in place, although it serves only once or has been disturbed.</summary>
internal static class OneWayParts
{
    /// <summary>What is wrong with the refit of <paramref name="strip"/>.</summary>
    public static IEnumerable<RefitFailure> Failures(StripRun strip) =>
        [.. Returning(strip), .. Retightened(strip), .. Unrenewed(strip)];

    private static IEnumerable<RefitFailure> Returning(StripRun strip) =>
        from action in strip.Actions
        where action.Verb == Verb.Remove
        let part = (Part)action.Target!
        where part.SingleUse && !IsRenewedOrGone(part, strip)
        select new SingleUseReturns(part, action);

    /// <summary>Those that are only loosened; what comes off goes back as new ones by itself.</summary>
    private static IEnumerable<RefitFailure> Retightened(StripRun strip) =>
        from action in strip.Actions
        where action is { Verb: Verb.Loosen, Target: Joint { SingleUse: true } }
        let joint = (Joint)action.Target!
        where strip.End.Attached(joint) > 0 && !strip.Discarded.Contains(joint)
        select new SingleUseTightened(joint, action);

    private static IEnumerable<RefitFailure> Unrenewed(StripRun strip)
    {
        Dictionary<MachineItem, PerformedAction>? openings = null;
        foreach (var (item, disturbers) in Renewable(strip.Procedure.Machine))
        {
            openings ??= Openings(strip);
            var opening = openings.GetValueOrDefault(item);
            if (IsRenewedOrGone(item, strip) || (item is Part { SingleUse: true } && opening is not null))
            {
                continue;
            }

            var disturbance = disturbers.Select(disturber => Disturbance(disturber, item, openings)).OfType<PerformedAction>().FirstOrDefault();
            if (disturbance is not null)
            {
                yield return new MustBeRenewed(item, disturbance, IsOff(item, strip.End) ? opening : null);
            }
        }
    }

    private static IEnumerable<(MachineItem Item, IEnumerable<MachineItem> Disturbers)> Renewable(Machine machine) =>
    [
        .. machine.Parts.Where(part => !part.RenewWith.IsEmpty).Select(part => ((MachineItem)part, part.RenewWith.AsEnumerable())),
        .. machine.Joints.Where(joint => !joint.RenewWith.IsEmpty).Select(joint => ((MachineItem)joint, joint.RenewWith.AsEnumerable())),
    ];

    /// <summary>For each joint that is opened and each part that comes off the action that does it first.</summary>
    private static Dictionary<MachineItem, PerformedAction> Openings(StripRun strip)
    {
        var openings = new Dictionary<MachineItem, PerformedAction>();
        foreach (var action in strip.Actions)
        {
            if (action.Verb == Verb.Remove || action is { Target: Joint { IsTemporary: false }, Changes: [{ Variable.Kind: StateKind.Attached }] })
            {
                openings.TryAdd(action.Target!, action);
            }
        }

        return openings;
    }

    /// <summary>What disturbs an item through another: the opening of that, or the removal of a part that it lies in and the item does not.</summary>
    private static PerformedAction? Disturbance(MachineItem disturber, MachineItem item, Dictionary<MachineItem, PerformedAction> openings)
    {
        if (openings.TryGetValue(disturber, out var opening))
        {
            return opening;
        }

        for (var around = (disturber as Part)?.Parent; around is not null && !IsWithin(item, around); around = around.Parent)
        {
            if (openings.TryGetValue(around, out var removal))
            {
                return removal;
            }
        }

        return null;
    }

    private static bool IsRenewedOrGone(MachineItem item, StripRun strip)
    {
        if (strip.Discarded.Contains(item) || strip.Replaced.Contains(item))
        {
            return true;
        }

        if (item is Joint { SingleUse: true } joint)
        {
            return strip.End.Attached(joint) == 0;
        }

        // A new part comes with all that was left inside the old one.
        return !IsOff(item, strip.End) && Around(item).Any(part => strip.Replaced.Contains(part) && IsWithin(item, part));
    }

    private static IEnumerable<Part> Around(MachineItem item)
    {
        for (var part = item is Joint joint ? joint.Owner : (item as Part)?.Parent; part is not null; part = part.Parent)
        {
            yield return part;
        }
    }

    private static bool IsOff(MachineItem item, MachineState state) => item switch
    {
        Part part => state.Place(part) == PartPlace.Out,
        Joint joint => state.Attached(joint) == 0,
        _ => false,
    };

    private static bool IsWithin(MachineItem item, Part part) => item switch
    {
        Part inner => inner.IsWithin(part),
        Joint { Role: not JointRole.Cover } joint => joint.Owner.IsWithin(part) && joint.Other?.IsWithin(part) == true,
        Joint cover => cover.Owner.IsWithin(part),
        _ => false,
    };
}
