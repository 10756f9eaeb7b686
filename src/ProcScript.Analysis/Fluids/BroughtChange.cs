using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Fluids;

/// <summary>What a new part of a job changes about a fluid.</summary>
/// <param name="Fluid">The fluid.</param>
/// <param name="Change">The change.</param>
/// <param name="With">The part that is fitted new: the one that the change names, or one that it comes in with.</param>
internal sealed record BroughtChange(Fluid Fluid, ChargeChange Change, Part With)
{
    /// <summary>The changes of all fluids by the new parts that go in.</summary>
    public static ImmutableArray<BroughtChange> Of(StripRun strip)
    {
        var changing = strip.Procedure.Machine.Fluids.Where(fluid => !fluid.Changes.IsEmpty).ToList();
        if (changing.Count == 0)
        {
            return [];
        }

        var removed = strip.Actions.Where(action => action.Verb == Verb.Remove).Select(action => action.Target).ToHashSet();
        return
        [
            .. from fluid in changing
               from change in fluid.Changes
               let with = Renewed(change.Part, strip, removed)
               where with is not null
               select new BroughtChange(fluid, change, with),
        ];
    }

    /// <summary>The new part that a part comes in with; null where the old one goes back. What was taken out of an old part goes into the new.</summary>
    private static Part? Renewed(Part part, StripRun strip, HashSet<MachineItem?> removed)
    {
        for (var with = part; with is not null && !strip.Discarded.Contains(with); with = with.Parent)
        {
            if (strip.Replaced.Contains(with))
            {
                return with;
            }

            if (removed.Contains(with))
            {
                return null;
            }
        }

        return null;
    }
}
