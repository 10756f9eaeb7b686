using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds <c>behind</c> and <c>needs</c>.</summary>
internal sealed class ConditionBinder(ItemLookup items, FindingSink sink)
{
    /// <summary>The conditions of <c>behind a, b</c>.</summary>
    public ImmutableArray<Condition> Behind(NamesPropertySyntax behind, BindingPlace place)
    {
        var conditions = ImmutableArray.CreateBuilder<Condition>(behind.Names.Length);
        foreach (var name in behind.Names)
        {
            if (items.Find<Part>(name, "a part", place) is { } part)
            {
                conditions.Add(new Condition(part, NeededState.OutOfTheWay, -1, NeedsPhase.Both, place.At(name.Span)));
            }
        }

        return conditions.DrainToImmutable();
    }

    /// <summary>The conditions of <c>after e, f</c>: each must be isolated first, and comes back later.</summary>
    public ImmutableArray<Condition> After(NamesPropertySyntax after, BindingPlace place) =>
    [
        .. after.Names
            .Select(name => (Name: name, Energy: items.Find<Energy>(name, "an energy", place)))
            .Where(found => found.Energy is not null)
            .Select(found => new Condition(found.Energy!, NeededState.Isolated, -1, NeedsPhase.Both, place.At(found.Name.Span))),
    ];

    /// <summary>The conditions of <c>needs …</c>; none where there is no such clause.</summary>
    public ImmutableArray<Condition> Needs(NeedsPropertySyntax? clause, BindingPlace place)
    {
        if (clause is null)
        {
            return [];
        }

        var conditions = ImmutableArray.CreateBuilder<Condition>(clause.Needs.Length);
        foreach (var need in clause.Needs)
        {
            if (Need(need, clause.Phase, place) is { } condition)
            {
                conditions.Add(condition);
            }
        }

        return conditions.DrainToImmutable();
    }

    /// <summary>One condition, or null with a finding.</summary>
    public Condition? Need(NeedSyntax need, NeedsPhase phase, BindingPlace place)
    {
        if (items.Find(need.Item, place) is not { } item)
        {
            return null;
        }

        if (item is Control control && need.Position is { } position)
        {
            return Positions.Find(control, position, place, sink) is >= 0 and var index
                ? new Condition(item, NeededState.Position, index, phase, place.At(need.Span))
                : null;
        }

        if (need.State is { IsMissing: true } || need.Position is { IsMissing: true })
        {
            sink.Poison();
            return null;
        }

        if (need.Position is null && StateOf(item, need.State?.Text) is { } state)
        {
            return new Condition(item, state, -1, phase, place.At(need.Span));
        }

        sink.Report(WrongConditionWord.At(item, need, place), place);
        return null;
    }

    private static NeededState? StateOf(MachineItem item, string? word) => (item, word) switch
    {
        (Energy, "live") => NeededState.Live,
        (Energy, "isolated") => NeededState.Isolated,
        (Fluid, "full") => NeededState.Full,
        (Fluid, "empty") => NeededState.Empty,
        (Part, "out") => NeededState.Out,
        (Part, "fitted") => NeededState.Fitted,
        (Part, "aside") => NeededState.Aside,
        (Part, "supported") => NeededState.Supported,
        (Joint, "off") => NeededState.Off,
        (Joint, "slack") => NeededState.Slack,
        _ => null,
    };
}
