using ProcScript.Analysis.Actions;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>What the rows of the action table ask of what is worked on.</summary>
internal static class WorkSources
{
    /// <summary>It is off the machine; of a joint that is replaced in part, so many pieces.</summary>
    public static void Off(ActionRequest request, NeedCollector collector) => collector.Add(request switch
    {
        { Target: Part part } => new PartOut(part),
        { Value: > 0 and var pieces } => new JointMissing(request.Joint, pieces),
        _ => new JointOff(request.Joint),
    });

    /// <summary>Nothing temporary goes away with it.</summary>
    public static void WithoutTemporary(ActionRequest request, NeedCollector collector)
    {
        if (request.Target is not Part part || collector.Facts.Temporary.IsEmpty)
        {
            return;
        }

        foreach (var temporary in collector.Facts.Temporary)
        {
            if (temporary != part && temporary.IsWithin(part))
            {
                collector.Add(new TemporaryOff(temporary));
            }
        }
    }

    /// <summary>
    /// A hand at a joint needs its energy isolated and its fluid out, whatever it does there, unless the step itself asks for them live
    /// or in.
    /// </summary>
    public static void Harmless(ActionRequest request, NeedCollector collector)
    {
        if (request.Target is not Joint joint)
        {
            return;
        }

        if (!request.Conditions.Any(condition => condition.Item == joint.On && condition.State == NeededState.Live))
        {
            JointSources.Powerless(request, collector);
        }

        if (!request.Conditions.Any(condition => condition.Item == joint.Carries && condition.State == NeededState.Full))
        {
            JointSources.Drained(request, collector);
        }
    }

    /// <summary>It is off, or somebody can get at it where it is.</summary>
    public static void OffOrReached(ActionRequest request, NeedCollector collector)
    {
        if (request.Target is Part part && collector.State.Place(part) == PartPlace.Out)
        {
            collector.Add(new PartOut(part));
        }
        else
        {
            ClearNeeds.Reach(request.Target!, collector);
        }
    }
}
