using ProcScript.Analysis.Actions;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>What the rows of the action table ask of parts.</summary>
internal static class PartSources
{
    /// <summary>It is where it belongs.</summary>
    public static void Fitted(ActionRequest request, NeedCollector collector) => collector.Add(new PartFitted(request.Part));

    /// <summary>It is not off.</summary>
    public static void InPlace(ActionRequest request, NeedCollector collector) => collector.Add(new PartInPlace(request.Part));

    /// <summary>It is aside.</summary>
    public static void Aside(ActionRequest request, NeedCollector collector) => collector.Add(new PartAside(request.Part));

    /// <summary>It is out.</summary>
    public static void Out(ActionRequest request, NeedCollector collector) => collector.Add(new PartOut(request.Part));

    /// <summary>A temporary part that is to be fitted is in place, and what holds it is complete and tight: else it bears nothing.</summary>
    public static void Bearing(PartFitted need, NeedCollector collector)
    {
        foreach (var joint in collector.Facts.Ties(need.Part))
        {
            if (joint.Role == JointRole.Held)
            {
                collector.Add(new JointComplete(joint) { Declared = need.Declared });
                collector.Add(new JointTight(joint) { Declared = need.Declared });
            }
        }
    }

    /// <summary>It is propped.</summary>
    public static void Propped(ActionRequest request, NeedCollector collector) => collector.Add(new PartPropped(request.Part, true));

    /// <summary>Everything that holds it is closed, so that it needs no prop.</summary>
    public static void Held(ActionRequest request, NeedCollector collector)
    {
        foreach (var joint in collector.Facts.Ties(request.Part))
        {
            if (joint.Role == JointRole.Held && !joint.IsTemporary)
            {
                JointSources.Whole(joint, collector);
            }
        }
    }

    /// <summary>It is not propped. While the machine comes apart it has to be in it; on the way back its prop stands ready before it.</summary>
    public static void Unpropped(ActionRequest request, NeedCollector collector)
    {
        collector.Add(new PartPropped(request.Part, false));
        if (collector.IsStrip)
        {
            collector.Add(new PartInPlace(request.Part));
        }
    }

    /// <summary>No joint ties it, or anything inside it, to the rest.</summary>
    public static void Untied(ActionRequest request, NeedCollector collector)
    {
        foreach (var joint in collector.Facts.Ties(request.Part))
        {
            collector.Add(new JointOff(joint));
        }
    }

    /// <summary>
    /// Who takes a temporary part off finds it propped, or finds it not: the prop that goes back to its place goes there first, for what is
    /// taken off leaves it behind.
    /// </summary>
    public static void OnItsPropOrNot(ActionRequest request, NeedCollector collector)
    {
        if (request.Part.IsTemporary)
        {
            collector.Add(new PartPropped(request.Part, collector.State[new StateVariable(StateKind.Propped, request.Part.Index)] == 1));
        }
    }

    /// <summary>The joints that its way aside names are off or slack, and the conditions of that way hold.</summary>
    public static void FreeToGoAside(ActionRequest request, NeedCollector collector)
    {
        if (request.Part.Aside is { } way)
        {
            foreach (var joint in way.Joints)
            {
                collector.Add(ClearNeeds.Free(joint, collector.State));
            }

            ClearNeeds.Consider(way.Conditions, Machines.Assemblies.RootOfPlace(request.Part, collector.State), collector);
        }
    }
}
