using ProcScript.Model.Machines;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Marks the joints of temporary parts: those between such a part, with all inside it, and the rest; and the covers over them.</summary>
internal static class TemporaryJoints
{
    /// <summary>Marks them. A cover stands behind the joint that it covers.</summary>
    public static void Mark(IReadOnlyCollection<Part> parts, IEnumerable<Joint> joints)
    {
        if (!parts.Any(part => part.IsTemporary))
        {
            return;
        }

        foreach (var joint in joints)
        {
            joint.IsTemporary = joint.Over?.IsTemporary ?? (IsFreed(joint.Owner, joint.Other) || IsFreed(joint.Other, joint.Owner));
        }
    }

    /// <summary>Whether a temporary part around one end leaves the other where it is.</summary>
    private static bool IsFreed(Part? part, Part? other)
    {
        for (; part is not null && other?.IsWithin(part) is not true; part = part.Parent)
        {
            if (part.IsTemporary)
            {
                return true;
            }
        }

        return false;
    }
}
