using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>
/// What it takes to get at an item: its own conditions and those of all that it lies in, as far as its assembly goes. On the
/// bench nothing outside is in the way; there the need is that the bench stays one.
/// </summary>
internal static class ClearNeeds
{
    /// <summary>Somebody can get at the target.</summary>
    public static void Reached(ActionRequest request, NeedCollector collector)
    {
        var first = collector.Count;
        Reach(request.Target!, collector);
        if (!collector.Facts.Temporary.IsEmpty)
        {
            SpareForItself(request.Target!, first, collector);
        }
    }

    /// <summary>Takes out again what asks for the temporary part that a hand is busy with.</summary>
    private static void SpareForItself(MachineItem item, int first, NeedCollector collector) =>
        collector.Drop(first, need => need.Declared?.Each.Any(way => way.Item is Part { IsTemporary: true } part && collector.Facts.Serves(item, part)) == true);

    /// <summary>Adds what it takes to get at <paramref name="item"/>.</summary>
    public static void Reach(MachineItem item, NeedCollector collector)
    {
        switch (item)
        {
            case Joint joint:
                var root = Assemblies.RootOf(joint.Owner, collector.State);
                var isFree = Consider(joint.Conditions, root, collector);
                if (joint.Over is { } hidden)
                {
                    isFree &= Consider(hidden.Conditions, root, collector);
                }

                Enclosing(joint.Owner, root, isFree, collector);
                break;
            case Part part:
                var place = Assemblies.RootOfPlace(part, collector.State);
                Enclosing(part.Parent, place, Consider(part.Conditions, place, collector), collector);
                break;
            default:
                Consider(item.Conditions, null, collector);
                break;
        }
    }

    /// <summary>Adds the given conditions of an item whose assembly has the root <paramref name="root"/>.</summary>
    /// <returns>Whether none was left out because the item is on the bench.</returns>
    public static bool Consider(ImmutableArray<Condition> conditions, Part? root, NeedCollector collector)
    {
        var allConsidered = true;
        foreach (var condition in conditions)
        {
            if (collector.Binds(condition))
            {
                allConsidered &= Consider(condition, root, collector);
            }
        }

        return allConsidered;
    }

    /// <summary>What binds the target's own way out and back, and nothing that lies in it.</summary>
    public static void OnItsWay(ActionRequest request, NeedCollector collector)
    {
        if (request.Part.WayOut.IsEmpty)
        {
            return;
        }

        var place = Assemblies.RootOfPlace(request.Part, collector.State);
        if (!Consider(request.Part.WayOut, place, collector) && place is not null)
        {
            collector.AddOnce(new PartOnBench(place));
        }
    }

    /// <summary>The need that a condition states. Of a choice the first way that is open, since that is the one which is used.</summary>
    public static Need NeedOf(Condition condition, MachineState state) => condition.State switch
    {
        NeededState.Slack => Free((Joint)condition.Item, state) with { Declared = condition },
        NeededState.AnyOf => Choose(condition, state),
        _ => NeedOf(condition),
    };

    /// <summary>The need that a condition states; of a joint off or slack, that it is off; of a choice, that any of its ways is open.</summary>
    public static Need NeedOf(Condition condition) => condition.State switch
    {
        NeededState.AnyOf => Choice(condition, NeedOf),
        NeededState.OutOfTheWay => new PartOutOfTheWay((Part)condition.Item) { Declared = condition },
        NeededState.Out => new PartOut((Part)condition.Item) { Declared = condition },
        NeededState.Fitted => new PartFitted((Part)condition.Item) { Declared = condition },
        NeededState.Aside => new PartAside((Part)condition.Item) { Declared = condition },
        NeededState.Supported => new PartPropped((Part)condition.Item, true) { Declared = condition },
        NeededState.Off or NeededState.Slack => new JointOff((Joint)condition.Item) { Declared = condition },
        NeededState.Live => new EnergyLive((Energy)condition.Item) { Declared = condition },
        NeededState.Isolated => new EnergyIsolated((Energy)condition.Item) { Declared = condition },
        NeededState.Full => new FluidFull((Fluid)condition.Item) { Declared = condition },
        NeededState.Empty => new FluidEmpty((Fluid)condition.Item) { Declared = condition },
        _ => new ControlAt((Control)condition.Item, condition.Position) { Declared = condition },
    };

    /// <summary>The first way of a choice that is open; the choice where none is.</summary>
    private static Need Choose(Condition choice, MachineState state)
    {
        var all = Choice(choice, way => NeedOf(way, state));
        return all.Ways.FirstOrDefault(way => way.IsMetBy(state[way.Variable])) ?? all;
    }

    private static AnyOf Choice(Condition choice, Func<Condition, Need> needOf) =>
        new([.. choice.Ways.Select(way => needOf(way) with { Declared = choice })]) { Declared = choice };

    /// <summary>A joint off or slack: slack where it is slack, since a joint stays so when it comes off.</summary>
    public static Need Free(Joint joint, MachineState state)
    {
        var slack = new JointSlack(joint);
        return slack.IsMetBy(state[slack.Variable]) ? slack : new JointOff(joint);
    }

    /// <summary>Adds the conditions of all that an item lies in, as far as its assembly goes, and that its bench stays one.</summary>
    private static void Enclosing(Part? innermost, Part? root, bool allConsidered, NeedCollector collector)
    {
        var part = innermost;
        for (; part != root; part = part!.Parent)
        {
            allConsidered &= Consider(part!.Conditions, root, collector);
        }

        if (collector.AsInTheMachine)
        {
            for (; part is not null; part = part.Parent)
            {
                allConsidered &= HaveAnyway(part.Conditions, collector);
            }
        }
        else if (root is not null)
        {
            allConsidered &= !collector.Facts.IsConditioned(root);
        }

        if (root is not null && !allConsidered)
        {
            collector.AddOnce(new PartOnBench(root));
        }
    }

    /// <summary>Adds the needs of conditions that the bench spares, as far as the first that is not met.</summary>
    private static bool HaveAnyway(ImmutableArray<Condition> conditions, NeedCollector collector)
    {
        foreach (var condition in conditions)
        {
            if (collector.Binds(condition) && !HasAnyway(condition, collector))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Adds the need of a condition that the bench spares, where it is met.</summary>
    private static bool HasAnyway(Condition condition, NeedCollector collector)
    {
        var need = NeedOf(condition, collector.State);
        if (!collector.IsMet(need))
        {
            return false;
        }

        collector.Add(need);
        return true;
    }

    /// <summary>A choice: a way that is open; else one that the assembly spares; else all of them are wanting.</summary>
    private static bool ConsiderChoice(Condition choice, Part? root, NeedCollector collector)
    {
        if (collector.AddOpenWay(choice, choice.Ways.Where(way => IsHere(way, root, collector))))
        {
            return true;
        }

        if (choice.Ways.FirstOrDefault(way => !IsHere(way, root, collector)) is { } spared)
        {
            return Consider(spared, root, collector);
        }

        collector.AddStated(NeedOf(choice, collector.State));
        return true;
    }

    /// <summary>Whether a condition of an item whose assembly has the root <paramref name="root"/> binds there.</summary>
    private static bool IsHere(Condition condition, Part? root, NeedCollector collector) =>
        (condition.Item is Part or Joint ? PlaceOf(condition.Item, collector) : null) == root;

    private static Part? PlaceOf(MachineItem item, NeedCollector collector) => item is Part part
        ? Assemblies.RootOfPlace(part, collector.State)
        : Assemblies.RootOf(((Joint)item).Owner, collector.State);

    /// <returns>Whether the condition was considered, or is void whatever becomes of the item's own assembly.</returns>
    private static bool Consider(Condition condition, Part? root, NeedCollector collector)
    {
        if (condition.State == NeededState.AnyOf)
        {
            return ConsiderChoice(condition, root, collector);
        }

        if (condition.Item is not (Part or Joint))
        {
            if (root is null)
            {
                collector.Add(condition);
                return true;
            }

            return collector.AsInTheMachine && HasAnyway(condition, collector);
        }

        var place = PlaceOf(condition.Item, collector);
        if (place == root)
        {
            collector.Add(condition);
            return true;
        }

        if (collector.AsInTheMachine && HasAnyway(condition, collector))
        {
            return true;
        }

        if (place is not null && (root is null || place.IsWithin(root)))
        {
            // What would be in the way went off with the part that holds it.
            collector.AddOnce(new PartOnBench(place));
        }

        return root is null;
    }
}
