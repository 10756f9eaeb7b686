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
    public IEnumerable<Condition> Behind(NamesPropertySyntax behind, BindingPlace place)
    {
        foreach (var name in behind.Names)
        {
            if (items.Find<Part>(name, "a part", place) is { } part)
            {
                yield return new Condition(part, NeededState.OutOfTheWay, -1, NeedsPhase.Both, place.At(name.Span));
            }
        }
    }

    /// <summary>The conditions of <c>needs …</c>.</summary>
    public IEnumerable<Condition> Needs(ImmutableArray<NeedSyntax> needs, NeedsPhase phase, BindingPlace place)
    {
        foreach (var need in needs)
        {
            if (Need(need, phase, place) is { } condition)
            {
                yield return condition;
            }
        }
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

        sink.Report(WrongConditionWord.At(item, need, place), place.Guards);
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
