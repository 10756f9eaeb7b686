using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Looks for what can be seen of a machine without running a procedure on it.</summary>
internal sealed class MachineChecks
{
    private readonly FindingSink _sink;
    private readonly ImmutableArray<(Part Hider, Condition Behind)>[] _hiders;
    private readonly ImmutableArray<Part> _parts;

    private MachineChecks(Machine machine, FindingSink sink)
    {
        _sink = sink;
        _parts = machine.Parts;
        _hiders = [.. machine.Parts.Select(Hiders)];
    }

    /// <summary>Reports what cannot ever come off.</summary>
    public static void Run(Machine machine, FindingSink sink)
    {
        foreach (var part in machine.Parts)
        {
            Deadlocked(part, part, sink);
            BehindItsInside(part, sink);
        }

        foreach (var joint in machine.Joints)
        {
            // A joint to a part inside its own does not hold the part.
            if (joint.Role != JointRole.Cover && joint.Other?.IsWithin(joint.Owner) is not true)
            {
                Deadlocked(joint, joint.Owner, sink);
            }
        }

        new MachineChecks(machine, sink).HiddenInARound();
        EnergyCircles.Report(machine.Energies, sink);
    }

    private static void Deadlocked(MachineItem item, Part part, FindingSink sink)
    {
        if (part.Aside is not null)
        {
            return;
        }

        foreach (var condition in item is Part own ? [.. own.Conditions, .. own.WayOut] : item.Conditions)
        {
            if (condition.Each.All(way => way.Item == part && Hides(way)))
            {
                sink.Report(BehindItself.At(item, part, condition));
                return;
            }
        }
    }

    /// <summary>A condition of a part about what lies in it binds that, too: it waits for itself.</summary>
    private static void BehindItsInside(Part part, FindingSink sink)
    {
        foreach (var condition in part.Conditions)
        {
            if (condition.Phase != NeedsPhase.Refit && condition.Each.All(way => IsFreedInside(way, part)))
            {
                sink.Report(BehindItself.Inside(part, condition));
                return;
            }
        }
    }

    private static bool IsFreedInside(Condition way, Part part) => way switch
    {
        { State: NeededState.OutOfTheWay or NeededState.Out or NeededState.Aside, Item: Part inner } => inner != part && inner.IsWithin(part),
        { State: NeededState.Off or NeededState.Slack, Item: Joint joint } => joint.Owner.IsWithin(part),
        _ => false,
    };

    /// <summary>Whether a condition wants a part away that is there from the start.</summary>
    private static bool Hides(Condition condition) =>
        condition is { State: NeededState.OutOfTheWay or NeededState.Out, Phase: NeedsPhase.Both or NeedsPhase.Strip, Item: Part { IsTemporary: false } };

    /// <summary>
    /// The parts that must come off before this one whatever happens: they hide it, cannot go aside, and sit right in the same part, so
    /// that neither can leave with something larger and be freed on the bench.
    /// </summary>
    private static ImmutableArray<(Part Hider, Condition Behind)> Hiders(Part part)
    {
        var hiders = ImmutableArray<(Part, Condition)>.Empty;
        foreach (var condition in part.Conditions.AddRange(part.WayOut))
        {
            if (condition.Item is Part { Aside: null } hider && hider != part && hider.Parent == part.Parent && Hides(condition))
            {
                hiders = hiders.Add((hider, condition));
            }
        }

        return hiders;
    }

    /// <summary>Walks depth first, on a stack of its own; reports the first round through each part.</summary>
    private void HiddenInARound()
    {
        var seen = new bool[_parts.Length];
        var depth = new int[_parts.Length];
        var path = new List<(Part Part, int Next)>();
        foreach (var root in _parts)
        {
            if (seen[root.Index])
            {
                continue;
            }

            Enter(root);
            while (path.Count > 0)
            {
                var (part, next) = path[^1];
                if (next == _hiders[part.Index].Length)
                {
                    depth[part.Index] = 0;
                    path.RemoveAt(path.Count - 1);
                    continue;
                }

                path[^1] = (part, next + 1);
                var hider = _hiders[part.Index][next].Hider;
                if (depth[hider.Index] > 0)
                {
                    var round = path
                        .Skip(depth[hider.Index] - 1)
                        .Select(step => (step.Part, _hiders[step.Part.Index][step.Next - 1].Behind));
                    _sink.Report(HiddenByEachOther.At([.. round]));
                }
                else if (!seen[hider.Index])
                {
                    Enter(hider);
                }
            }
        }

        void Enter(Part part)
        {
            seen[part.Index] = true;
            path.Add((part, 0));
            depth[part.Index] = path.Count;
        }
    }
}
