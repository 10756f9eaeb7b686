using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Machines;

/// <summary>What a live energy can reach, and what keeps hands away from it.</summary>
internal sealed class Guards
{
    private readonly Machine _machine;
    private readonly ImmutableArray<MachineItem>[] _exposed;
    private readonly MachineItem[]?[] _whole;

    /// <summary>Works them out.</summary>
    public Guards(Machine machine)
    {
        _machine = machine;
        _whole = new MachineItem[]?[machine.Energies.Length];
        var on = machine.Joints.Where(joint => joint.On is not null).ToLookup(joint => joint.On!, joint => (MachineItem)joint);
        var asking = machine.Energies.IsEmpty ? Enumerable.Empty<(MachineItem, Energy)>().ToLookup(one => one.Item2, one => one.Item1) : Asking(machine);
        _exposed = [.. machine.Energies.Select(energy => on[energy].Concat(asking[energy]).Distinct().ToImmutableArray())];
    }

    /// <summary>The joints on an energy, and the joints and parts that ask for it isolated when they are put back.</summary>
    public ImmutableArray<MachineItem> ExposedBy(Energy energy) => _exposed[energy.Index];

    /// <summary>
    /// The fluids that an energy drives, since joints on it carry them: a pump that starts without its fluid is ruined, and spits. Not those that
    /// can only be filled while the energy is live, at once or by a control that moves only then.
    /// </summary>
    public static IEnumerable<Fluid> DrivenBy(Energy energy, IEnumerable<MachineItem> exposed) =>
        from fluid in exposed.OfType<Joint>().Where(joint => joint.On == energy).Select(joint => joint.Carries).OfType<Fluid>().Distinct()
        where !WantsLive(fluid, energy) && !fluid.Conditions.SelectMany(condition => condition.Each).Any(condition => condition.Item is Control control && WantsLive(control, energy))
        select fluid;

    private static bool WantsLive(MachineItem item, Energy energy) =>
        item.Conditions.SelectMany(condition => condition.Each).Any(condition => condition.Item == energy && condition is { State: NeededState.Live, Phase: not NeedsPhase.Strip });

    /// <summary>
    /// The parts and covers that hide or guard what an energy can reach, those behind which these are hidden among them. What is in the way
    /// of the energy's own isolating device has to be off for it to come back, and is no guard of it.
    /// </summary>
    /// <param name="energy">The energy.</param>
    /// <param name="open">What may be open: what it hides is taken to be open with it, and what hides it alone is not asked for.</param>
    public IReadOnlyList<MachineItem> Of(Energy energy, ImmutableArray<MachineItem> open) =>
        open.IsEmpty ? _whole[energy.Index] ??= Find(energy, open) : Find(energy, open);

    private MachineItem[] Find(Energy energy, ImmutableArray<MachineItem> open)
    {
        var seen = new HashSet<MachineItem>(open);
        Hide([energy], seen);
        return [.. Hide(ExposedBy(energy).SelectMany(Inside).Where(inner => !seen.Contains(inner)), seen)];
    }

    /// <summary>What hides any of the items, and what hides that, and so on, as far as it is not known yet.</summary>
    private static List<MachineItem> Hide(IEnumerable<MachineItem> items, HashSet<MachineItem> known)
    {
        var hiders = new List<MachineItem>();
        var waiting = new Queue<MachineItem>(items);
        while (waiting.TryDequeue(out var hidden))
        {
            foreach (var hider in HidersOf(hidden))
            {
                if (known.Add(hider))
                {
                    hiders.Add(hider);
                    waiting.Enqueue(hider);
                }
            }
        }

        return hiders;
    }

    /// <summary>A joint; a part with all parts and joints that it holds.</summary>
    private IEnumerable<MachineItem> Inside(MachineItem item) => item is not Part part
        ? [item]
        : [.. _machine.Parts.Where(inner => inner.IsWithin(part)), .. _machine.Joints.Where(joint => joint.Owner.IsWithin(part))];

    private static IEnumerable<MachineItem> HidersOf(MachineItem item)
    {
        var conditions = item switch
        {
            Joint { Over: { } hidden } cover => [.. cover.Conditions, .. hidden.Conditions],
            _ => item.Conditions,
        };
        // Of a choice every way is a guard: with any one of them off, hands get there.
        foreach (var hider in conditions.SelectMany(condition => condition.Each).SelectMany(Hiders))
        {
            yield return hider;
        }

        foreach (var cover in (item as Joint)?.Covers ?? [])
        {
            yield return cover;
        }

        for (var around = item is Joint joint ? joint.Owner : (item as Part)?.Parent; around is not null; around = around.Parent)
        {
            foreach (var hider in around.Conditions.SelectMany(condition => condition.Each).SelectMany(Hiders))
            {
                yield return hider;
            }
        }
    }

    /// <summary>The part that a condition wants away, with what that part lies in: off with it, it guards nothing.</summary>
    private static IEnumerable<Part> Hiders(Condition condition)
    {
        if (condition.State is NeededState.OutOfTheWay or NeededState.Out or NeededState.Aside)
        {
            for (var part = (Part?)condition.Item; part is not null; part = part.Parent)
            {
                yield return part;
            }
        }
    }

    private static ILookup<Energy, MachineItem> Asking(Machine machine) =>
        machine.Parts.Concat<MachineItem>(machine.Joints)
            .SelectMany(item => (item is Part { WayOut.IsEmpty: false } part ? part.Conditions.Concat(part.WayOut) : item.Conditions)
                .Where(condition => condition is { State: NeededState.Isolated, Phase: not NeedsPhase.Strip })
                .Select(condition => (Item: item, Energy: (Energy)condition.Item)))
            .ToLookup(asking => asking.Energy, asking => asking.Item);
}
