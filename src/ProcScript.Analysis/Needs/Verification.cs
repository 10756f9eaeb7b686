using ProcScript.Analysis.Actions;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>Where an energy is proved to be off, and whether anybody can get there.</summary>
internal static class Verification
{
    /// <summary>Somebody can get at the place where the energy is proved to be off.</summary>
    public static void Reached(ActionRequest request, NeedCollector collector)
    {
        if (((Energy)request.Target!).VerifyAt is not { } place)
        {
            return;
        }

        var first = collector.Count;
        switch (place.Item)
        {
            case Joint joint:
                ClearNeeds.Reach(joint, collector);
                foreach (var cover in joint.Covers)
                {
                    collector.Add(new CoverOff(cover));
                }

                break;
            case { } item:
                ClearNeeds.Reach(item, collector);
                break;
        }

        ClearNeeds.Consider(place.Conditions, null, collector);
        // To press a button that the energy itself feeds is how one tries whether it is off.
        collector.Drop(first, need => need.Item == request.Target);
    }

    /// <summary>The same for an isolation that ends with the proof.</summary>
    public static void ReachedWhereItEndsWithIt(ActionRequest request, NeedCollector collector)
    {
        if (request.Value == (int)EnergyState.Dead)
        {
            Reached(request, collector);
        }
    }

    /// <summary>
    /// An isolation as it can be done in the state at hand: its step ends with the proof where somebody can get at the place of that,
    /// else the proof is a step of its own.
    /// </summary>
    public static ActionRequest Prepared(ActionRequest request, NeedCollector collector) =>
        request is { Verb: Model.Procedures.Verb.Isolate, Target: Energy { VerifyAt: not null } }
            ? request with { Value = (int)(IsReached(request.Target, collector) ? EnergyState.Dead : EnergyState.Unproved) }
            : request;

    private static bool IsReached(MachineItem energy, NeedCollector collector) =>
        collector.On(collector.State).AllMetOf(new ActionRequest(Model.Procedures.Verb.Verify, energy), Reached);
}
