using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds <c>behind</c> and <c>needs</c>.</summary>
internal sealed class ConditionBinder(ItemLookup items, FindingSink sink)
{
    /// <summary>The conditions of <c>after e, f</c>: each must be isolated first, and comes back later.</summary>
    public ImmutableArray<Condition> After(NamesPropertySyntax after, BindingPlace place) =>
    [
        .. after.Names
            .Select(name => (Name: name, Energy: items.Find<Energy>(name, "an energy", place)))
            .Where(found => found.Energy is not null)
            .Select(found => new Condition(found.Energy!, NeededState.Isolated, -1, NeedsPhase.Both, place.At(found.Name.Span))),
    ];

    /// <summary>The conditions of <c>needs …</c> or <c>behind …</c>; none where there is no such clause.</summary>
    /// <param name="clause">The clause.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="owner">The item in whose text it stands; null where it is none.</param>
    public ImmutableArray<Condition> Needs(NeedsPropertySyntax? clause, BindingPlace place, MachineItem? owner = null)
    {
        if (clause is null)
        {
            return [];
        }

        var isBehind = clause.Keyword.Text is "behind" or "way behind";
        return Joined(
            clause.Needs,
            need => isBehind ? Behind(need, clause.Phase, place) : Need(need, clause.Phase, place),
            place,
            owner);
    }

    /// <summary>Binds what stands between commas and <c>or</c>s; what an <c>or</c> joins makes one condition.</summary>
    /// <param name="needs">The needs.</param>
    /// <param name="bind">Binds one; null with a finding.</param>
    /// <param name="place">Where they stand.</param>
    /// <param name="owner">The item in whose text they stand.</param>
    public static ImmutableArray<Condition> Joined(
        ImmutableArray<NeedSyntax> needs, Func<NeedSyntax, Condition?> bind, BindingPlace place, MachineItem? owner)
    {
        var conditions = ImmutableArray.CreateBuilder<Condition>(needs.Length);
        for (var i = 0; i < needs.Length;)
        {
            var first = i;
            var ways = ImmutableArray.CreateBuilder<Condition>(1);
            do
            {
                if (bind(needs[i]) is { } way)
                {
                    ways.Add(way with { Owner = owner });
                }
            }
            while (++i < needs.Length && needs[i].IsAlternative);

            // Without a way that could not be bound, a choice would ask for more than it says.
            if (ways.Count == i - first)
            {
                conditions.Add(ways is [var only] ? only : Choice(ways.ToImmutable(), place.At(needs[first].Span.Cover(needs[i - 1].Span))));
            }
        }

        return conditions.ToImmutable();
    }

    private static Condition Choice(ImmutableArray<Condition> ways, SourceSpan declared) =>
        new(ways[0].Item, NeededState.AnyOf, -1, ways[0].Phase, declared) { Ways = ways, Owner = ways[0].Owner };

    private Condition? Behind(NeedSyntax hider, NeedsPhase phase, BindingPlace place) =>
        items.Find<Part>(hider.Item, "a part", place) is { } part
            ? new Condition(part, NeededState.OutOfTheWay, -1, phase, place.At(hider.Span))
            : null;

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
