using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>
/// What has to be whole before an energy comes back, written down a second time: what it can reach, and whatever stands before that, as often
/// as something new turns up.
/// </summary>
internal static class NaiveGuards
{
    public static HashSet<MachineItem> Of(Machine machine, MachineItem energy)
    {
        var all = machine.Parts.Concat<MachineItem>(machine.Joints).ToList();
        HashSet<MachineItem> exposed =
        [
            .. machine.Joints.Where(joint => joint.On == energy),
            .. all.Where(item => item.Conditions.Concat((item as Part)?.WayOut ?? []).Any(condition =>
                condition.Item == energy && condition.State == NeededState.Isolated && condition.Phase != NeedsPhase.Strip)),
        ];
        var hidden = all.Where(item => exposed.Any(one => one == item || (one is Part part && IsIn(item, part)))).ToHashSet();
        // What has to be off for somebody to get at the switch cannot be in place when it is turned on.
        var off = AllBefore([energy], []);
        return [.. exposed, .. AllBefore(hidden, off)];
    }

    private static HashSet<MachineItem> AllBefore(IEnumerable<MachineItem> items, HashSet<MachineItem> without)
    {
        var before = new HashSet<MachineItem>();
        var next = items.Where(item => !without.Contains(item)).ToList();
        while (next.Count > 0)
        {
            next = [.. next.SelectMany(Before).Where(item => !without.Contains(item) && before.Add(item))];
        }

        return before;
    }

    private static bool IsIn(MachineItem item, Part part) => item is Part inner ? inner.IsWithin(part) : ((Joint)item).Owner.IsWithin(part);

    /// <summary>What stands before an item: parts that somebody has to move to get at it, each with all around it, and covers.</summary>
    private static IEnumerable<MachineItem> Before(MachineItem item)
    {
        var owner = item is Joint joint ? joint.Owner : (item as Part)?.Parent;
        var conditions = item.Conditions
            .Concat((item as Joint)?.Over?.Conditions ?? [])
            .Concat(Up(owner).SelectMany(part => part.Conditions));
        // With any one way of a choice off, hands get there: all of them stand before it.
        return conditions
            .SelectMany(condition => condition.Each)
            .Where(condition => condition.State is NeededState.OutOfTheWay or NeededState.Out or NeededState.Aside)
            .SelectMany(condition => Up((Part)condition.Item))
            .Concat((item as Joint)?.Covers.AsEnumerable<MachineItem>() ?? []);
    }

    private static IEnumerable<Part> Up(Part? part)
    {
        for (; part is not null; part = part.Parent)
        {
            yield return part;
        }
    }
}
