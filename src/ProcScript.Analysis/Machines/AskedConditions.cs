using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>What is asked for a joint by its own conditions and by those of the parts that it lies in.</summary>
internal static class AskedConditions
{
    /// <summary>Whether one of them asks for a state, such as that an energy is isolated.</summary>
    public static bool AskFor(this Joint joint, NeededState state)
    {
        for (var part = joint.Owner; part is not null; part = part.Parent)
        {
            if (part.Conditions.Any(condition => condition.State == state))
            {
                return true;
            }
        }

        return joint.Conditions.Any(condition => condition.State == state);
    }
}
