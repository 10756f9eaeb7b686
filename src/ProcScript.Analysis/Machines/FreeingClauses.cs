using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Machines;

/// <summary>What each goal of a strip needs, when whatever was once true may be relied on for ever.</summary>
/// <param name="facts">The machine.</param>
internal sealed class FreeingClauses(MachineFacts facts)
{
    private List<FreeingClause> _clauses = [];
    private MachineItem? _item;

    /// <summary>
    /// Whether props, proofs and the positions of controls are goals of their own, as where every action counts; else they are taken to be had for
    /// the asking.
    /// </summary>
    public bool InFull { get; init; }

    /// <summary>The goals of a machine, in the order of declaration sort by sort.</summary>
    public static IEnumerable<FreeingGoal> Goals(Machine machine)
    {
        foreach (var joint in machine.Joints)
        {
            yield return new FreeingGoal(FreeingKind.Off, joint);
            if (joint.Kind.Category == KindCategory.Fastener)
            {
                yield return new FreeingGoal(FreeingKind.Slack, joint);
            }
        }

        foreach (var part in machine.Parts)
        {
            yield return new FreeingGoal(FreeingKind.Out, part);
            if (part.IsTemporary)
            {
                yield return new FreeingGoal(FreeingKind.Fitted, part);
            }

            if (part.Aside is not null)
            {
                yield return new FreeingGoal(FreeingKind.Aside, part);
            }
        }

        foreach (var item in machine.Energies.Concat<MachineItem>(machine.Fluids).Concat(machine.Controls))
        {
            yield return new FreeingGoal(FreeingKind.Switched, item);
        }
    }

    /// <summary>What a goal needs; all of it.</summary>
    public List<FreeingClause> Of(FreeingGoal goal)
    {
        _clauses = [];
        _item = goal.Item;
        switch (goal)
        {
            case (FreeingKind.Off or FreeingKind.Slack, Joint { IsTemporary: true }):
            case (FreeingKind.Out, Part { IsTemporary: true }):
                // It is so from the start.
                break;
            case (FreeingKind.Fitted, Part part):
                Conditions(part.Conditions, part, part.Parent);
                Enclosing(part.Parent, part.Parent);
                foreach (var joint in facts.Ties(part))
                {
                    OpenJoint(joint);
                }

                break;
            case (FreeingKind.Off or FreeingKind.Slack, Joint joint):
                OpenJoint(joint);
                break;
            case (FreeingKind.Out, Part part):
                Conditions(part.Conditions, part, part.Parent);
                Conditions(part.WayOut, part, part.Parent);
                Enclosing(part.Parent, part.Parent);
                foreach (var joint in facts.Ties(part))
                {
                    Add(joint, null, [new FreeingGoal(FreeingKind.Off, joint)]);
                }

                break;
            case (FreeingKind.Aside, Part { Aside: { } way } part):
                if (part.IsTemporary)
                {
                    Add(part, null, [new FreeingGoal(FreeingKind.Fitted, part)]);
                }

                Conditions(part.Conditions, part, part.Parent);
                Conditions(part.WayOut, part, part.Parent);
                Enclosing(part.Parent, part.Parent);
                foreach (var joint in way.Joints)
                {
                    Add(joint, null, Free(joint));
                }

                Conditions(way.Conditions, part, part.Parent);
                break;
            case (FreeingKind.Reached, Joint joint):
                OpenJoint(joint);
                break;
            case (FreeingKind.Reached, Part part):
                Conditions(part.Conditions, part, part.Parent);
                Enclosing(part.Parent, part.Parent);
                break;
            case (FreeingKind.Renewed, var item):
                Add(item, null, [new FreeingGoal(item is Part ? FreeingKind.Out : FreeingKind.Off, item)]);
                break;
            case (FreeingKind.Propped, _):
                break;
            case (FreeingKind.Proved, Energy energy):
                Add(energy, null, [new FreeingGoal(FreeingKind.Switched, energy)]);
                Proof(energy);
                break;
            case (FreeingKind.ProvedAtOnce, Energy energy):
                Conditions(energy.Conditions, null, null);
                Proof(energy);
                break;
            default:
                Conditions(goal.Item.Conditions, null, null);
                break;
        }

        return _clauses;
    }

    private void OpenJoint(Joint joint)
    {
        var common = Assemblies.CommonPart(joint);
        Conditions(joint.Conditions, null, common);
        Conditions(joint.Over?.Conditions ?? [], null, common);
        Enclosing(joint.Owner, common);
        foreach (var cover in joint.Covers)
        {
            Add(cover, null, [new FreeingGoal(FreeingKind.Off, cover)]);
        }

        Service(joint.On, common);
        Service(joint.Carries, common);
    }

    /// <summary>What it takes to get at the place where an energy is proved to be off, but for the energy itself.</summary>
    private void Proof(Energy energy)
    {
        var first = _clauses.Count;
        switch (energy.VerifyAt?.Item)
        {
            case Joint joint:
                var common = Assemblies.CommonPart(joint);
                Conditions(joint.Conditions, null, common);
                Conditions(joint.Over?.Conditions ?? [], null, common);
                Enclosing(joint.Owner, common);
                foreach (var cover in joint.Covers)
                {
                    Add(cover, null, [new FreeingGoal(FreeingKind.Off, cover)]);
                }

                break;
            case Part part:
                Conditions(part.Conditions, part, part.Parent);
                Enclosing(part.Parent, part.Parent);
                break;
            case { } item:
                Conditions(item.Conditions, null, null);
                break;
        }

        Conditions(energy.VerifyAt?.Conditions ?? [], null, null);
        // To press a button that the energy itself feeds is how one tries whether it is off.
        _clauses = [.. _clauses.Take(first), .. _clauses.Skip(first).Where(clause => clause.About != energy)];
    }

    private void Enclosing(Part? innermost, Part? bench)
    {
        for (var part = innermost; part is not null; part = part.Parent)
        {
            Conditions(part.Conditions, part, bench);
        }
    }

    /// <summary>Adds the conditions written on <paramref name="level"/> (null: on a joint), with what a bench spares.</summary>
    private void Conditions(ImmutableArray<Condition> conditions, Part? level, Part? bench)
    {
        foreach (var condition in conditions)
        {
            if (condition.Phase == NeedsPhase.Refit || condition.Each.Any(IsForItself))
            {
                continue;
            }

            ImmutableArray<FreeingGoal>? ways = [];
            foreach (var way in condition.Each)
            {
                ways = Ways(way, level, bench) is { } goals ? ways?.AddRange(goals) : null;
            }

            if (ways is { } all)
            {
                Add(condition.Item, condition, all);
            }
        }
    }

    /// <summary>Whether it asks for the temporary part that the goal is about.</summary>
    private bool IsForItself(Condition condition) =>
        condition.Item is Part { IsTemporary: true } part && _item is not null && facts.Serves(_item, part);

    /// <returns>The goals that make a condition true or have a bench spare it; null where it is true from the start.</returns>
    private ImmutableArray<FreeingGoal>? Ways(Condition condition, Part? level, Part? bench)
    {
        var ways = Ways(condition);
        for (var root = bench; root is not null; root = root.Parent)
        {
            if ((level is not null && root.IsWithin(level)) || !LiesIn(condition.Item, root))
            {
                ways = ways?.Add(new FreeingGoal(FreeingKind.Out, root));
            }
        }

        return InFull ? ways?.AddRange(GoneWith(condition.Item, bench)) : ways;
    }

    /// <summary>What would be in the way goes off with a part that it lies in, where what it is in the way of stays behind.</summary>
    private static IEnumerable<FreeingGoal> GoneWith(MachineItem item, Part? bench)
    {
        var around = item switch
        {
            Part part => part.Parent,
            Joint joint => joint.Owner,
            _ => null,
        };
        for (; around is not null && bench?.IsWithin(around) != true; around = around.Parent)
        {
            yield return new FreeingGoal(FreeingKind.Out, around);
        }
    }

    /// <summary>A joint's energy or fluid, if it has one: switched off, or the joint is on a bench.</summary>
    private void Service(MachineItem? service, Part? bench)
    {
        if (service is not null)
        {
            ImmutableArray<FreeingGoal> spared = [];
            for (var root = bench; root is not null; root = root.Parent)
            {
                spared = spared.Add(new FreeingGoal(FreeingKind.Out, root));
            }

            Add(service, null, [.. Switched(service), .. spared]);
            if (InFull && service is Energy { VerifyAt: not null })
            {
                Add(service, null, [new FreeingGoal(FreeingKind.Proved, service), new FreeingGoal(FreeingKind.ProvedAtOnce, service), .. spared]);
            }
        }
    }

    /// <summary>An energy isolated, with the proof or without, or a fluid emptied.</summary>
    private ImmutableArray<FreeingGoal> Switched(MachineItem service) => InFull && service is Energy { VerifyAt: not null }
        ? [new FreeingGoal(FreeingKind.ProvedAtOnce, service), new FreeingGoal(FreeingKind.Switched, service)]
        : [new FreeingGoal(FreeingKind.Switched, service)];

    private static bool LiesIn(MachineItem item, Part root) => item switch
    {
        Part part => part != root && part.IsWithin(root),
        Joint joint => joint.Owner.IsWithin(root),
        _ => false,
    };

    /// <returns>The goals that make a condition true; null where it is true from the start.</returns>
    private ImmutableArray<FreeingGoal>? Ways(Condition condition) => condition.State switch
    {
        NeededState.OutOfTheWay or NeededState.Out when condition.Item is Part { IsTemporary: true } => null,
        NeededState.Off or NeededState.Slack when condition.Item is Joint { IsTemporary: true } => null,
        NeededState.Fitted when condition.Item is Part { IsTemporary: true } => [new FreeingGoal(FreeingKind.Fitted, condition.Item)],
        NeededState.OutOfTheWay => [.. Aside(condition.Item), new FreeingGoal(FreeingKind.Out, condition.Item)],
        NeededState.Out => [new FreeingGoal(FreeingKind.Out, condition.Item)],
        NeededState.Aside => Aside(condition.Item),
        NeededState.Off => [new FreeingGoal(FreeingKind.Off, condition.Item)],
        NeededState.Slack => Free((Joint)condition.Item),
        NeededState.Isolated or NeededState.Empty => Switched(condition.Item),
        NeededState.Supported when InFull => [new FreeingGoal(FreeingKind.Propped, condition.Item)],
        NeededState.Position when condition.Position != 0 =>
            [new FreeingGoal(FreeingKind.Switched, condition.Item) { Position = InFull ? condition.Position : 0 }],
        _ => null,
    };

    private static ImmutableArray<FreeingGoal> Aside(MachineItem item) =>
        item is Part { Aside: not null } ? [new FreeingGoal(FreeingKind.Aside, item)] : [];

    private static ImmutableArray<FreeingGoal> Free(Joint joint) =>
        ActionTarget.Of(joint) == ActionTargets.Fastener
            ? [new FreeingGoal(FreeingKind.Slack, joint), new FreeingGoal(FreeingKind.Off, joint)]
            : [new FreeingGoal(FreeingKind.Off, joint)];

    private void Add(MachineItem about, Condition? condition, ImmutableArray<FreeingGoal> ways) =>
        _clauses.Add(new FreeingClause(about, condition, ways));
}
