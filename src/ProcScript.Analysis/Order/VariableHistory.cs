using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;

namespace ProcScript.Analysis.Order;

/// <summary>Who changes which variable along a sequence of actions, and so when a need is met.</summary>
internal sealed class VariableHistory
{
    private readonly StateLayout _layout;
    private readonly MachineState _start;
    private readonly NumberedGroups<Write> _writes;

    /// <summary>Notes the changes of a sequence that begins at <paramref name="start"/>.</summary>
    public VariableHistory(StateLayout layout, MachineState start, IReadOnlyList<CausalStep> sequence)
    {
        _layout = layout;
        _start = start;
        var writes = new List<Write>(sequence.Count);
        for (var i = 0; i < sequence.Count; i++)
        {
            foreach (var change in sequence[i].Changes)
            {
                writes.Add(new Write(layout.Slot(change.Variable), i, change.After));
            }
        }

        _writes = new NumberedGroups<Write>(layout.Size, writes, write => write.Slot);
    }

    /// <summary>All changes, variable after variable.</summary>
    public ReadOnlySpan<Write> Writes => _writes.All;

    /// <summary>The actions, in order, that change a variable.</summary>
    public ReadOnlySpan<Write> WritesOf(StateVariable variable) => _writes[_layout.Slot(variable)];

    /// <summary>
    /// The stretch of the sequence in which a need of the action at <paramref name="index"/> is met: the one that holds the
    /// action; else the next one after it; else the last one before it; null where there is none.
    /// </summary>
    public Stretch? Find(Need need, int index)
    {
        var writes = WritesOf(need.Variable);
        var here = CountBefore(writes, index);
        return MetAfter(need, writes, here)
            ? Around(need, writes, here)
            : After(need, writes, here + 1) ?? Before(need, writes, here - 1);
    }

    /// <summary>
    /// The same of a choice, with the way that it is by: the first one that is open there; else the one that opens next; else the one that was
    /// open last. Null where none ever is.
    /// </summary>
    public (Need Way, Stretch Stretch)? Find(AnyOf choice, int index)
    {
        (Need Way, Stretch Stretch)? next = null;
        (Need Way, Stretch Stretch)? last = null;
        foreach (var way in choice.Ways)
        {
            if (Find(way, index) is not { } stretch)
            {
                continue;
            }

            if (stretch.End < index)
            {
                last = last is null || last.Value.Stretch.End < stretch.End ? (way, stretch) : last;
            }
            else if (stretch.Begin is null || stretch.Begin < index)
            {
                return (way, stretch);
            }
            else
            {
                next = next is null || next.Value.Stretch.Begin > stretch.Begin ? (way, stretch) : next;
            }
        }

        return next ?? last;
    }

    /// <summary>The last change of a variable before the action at <paramref name="index"/>; -1 where there is none.</summary>
    public int LastBefore(StateVariable variable, int index)
    {
        var writes = WritesOf(variable);
        var count = CountBefore(writes, index);
        return count == 0 ? -1 : writes[count - 1].Action;
    }

    private Stretch? After(Need need, ReadOnlySpan<Write> writes, int from)
    {
        for (var count = from; count <= writes.Length; count++)
        {
            if (MetAfter(need, writes, count))
            {
                return Around(need, writes, count);
            }
        }

        return null;
    }

    private Stretch? Before(Need need, ReadOnlySpan<Write> writes, int from)
    {
        for (var count = from; count >= 0; count--)
        {
            if (MetAfter(need, writes, count))
            {
                return Around(need, writes, count);
            }
        }

        return null;
    }

    private Stretch Around(Need need, ReadOnlySpan<Write> writes, int count)
    {
        var first = count;
        while (first > 0 && MetAfter(need, writes, first - 1))
        {
            first--;
        }

        var last = count;
        while (last < writes.Length && MetAfter(need, writes, last + 1))
        {
            last++;
        }

        return new Stretch(first == 0 ? null : writes[first - 1].Action, last == writes.Length ? null : writes[last].Action);
    }

    private bool MetAfter(Need need, ReadOnlySpan<Write> writes, int count) =>
        need.IsMetBy(count == 0 ? _start[need.Variable] : writes[count - 1].Value);

    private static int CountBefore(ReadOnlySpan<Write> writes, int index)
    {
        var (low, high) = (0, writes.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = writes[middle].Action < index ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}

/// <summary>An action sets a variable.</summary>
/// <param name="Slot">The place of the variable.</param>
/// <param name="Action">The index of the action.</param>
/// <param name="Value">The value.</param>
internal readonly record struct Write(int Slot, int Action, int Value);

/// <summary>A stretch of a sequence in which a need is met.</summary>
/// <param name="Begin">The index of the action that makes it true; null where it is so from the start.</param>
/// <param name="End">The index of the action that makes it false; null where it stays so.</param>
internal readonly record struct Stretch(int? Begin, int? End);
