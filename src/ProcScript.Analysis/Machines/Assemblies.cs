using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>Which parts are together: those of the machine, or those that lie in a part that is off.</summary>
internal static class Assemblies
{
    /// <summary>The part that is off and that <paramref name="part"/> is, or lies in; null where it is in the machine.</summary>
    public static Part? RootOf(Part? part, MachineState state)
    {
        while (part is not null && state.Place(part) != PartPlace.Out)
        {
            part = part.Parent;
        }

        return part;
    }

    /// <summary>The root of the assembly that the place of <paramref name="part"/> belongs to, whether or not it is there.</summary>
    public static Part? RootOfPlace(Part part, MachineState state) => RootOf(part.Parent, state);

    /// <summary>The least part that holds both ends of a joint, or the joint that a cover hides; null for the machine.</summary>
    public static Part? CommonPart(Joint joint)
    {
        if (joint.Role == JointRole.Cover)
        {
            return joint.Owner;
        }

        Part? part = joint.Other is null ? null : joint.Owner;
        while (part is not null && !joint.Other!.IsWithin(part))
        {
            part = part.Parent;
        }

        return part;
    }

    /// <summary>
    /// The parts from either end of a joint up to, not including, the least part that holds both ends. While none of them is
    /// off, the ends are together; taking any of them off would tear the joint.
    /// </summary>
    public static IEnumerable<Part> BelowTheCommonPart(Joint joint)
    {
        var common = CommonPart(joint);
        for (Part? part = joint.Owner; part != common; part = part!.Parent)
        {
            yield return part!;
        }

        for (var part = joint.Other; part != common; part = part!.Parent)
        {
            yield return part!;
        }
    }
}
