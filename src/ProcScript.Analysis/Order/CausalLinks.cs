using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;

namespace ProcScript.Analysis.Order;

/// <summary>
/// What must go before what in a sequence of actions: whoever makes a need true before the action that has it, whoever makes it
/// false after that, and the changes of one variable one after the other. Every order that keeps these edges can be worked.
/// </summary>
internal sealed class CausalLinks
{
    private readonly List<OrderEdge> _edges = [];
    private readonly List<UnmetNeed> _unmet = [];
    private readonly ImmutableArray<MetNeed>[] _met;

    /// <summary>Links the actions of a sequence that begins at <paramref name="start"/>; edges name actions by their indices.</summary>
    public CausalLinks(StateLayout layout, MachineState start, IReadOnlyList<CausalStep> sequence)
    {
        var history = new VariableHistory(layout, start, sequence);
        _met = new ImmutableArray<MetNeed>[sequence.Count];
        for (var i = 0; i < sequence.Count; i++)
        {
            var needs = sequence[i].Needs;
            var met = new MetNeed[needs.Length];
            for (var j = 0; j < needs.Length; j++)
            {
                var need = needs[j] is AnyOf choice ? history.Find(choice, i)?.Way ?? choice : needs[j];
                met[j] = new MetNeed(need, Link(need, i, sequence[i].Changes, history));
            }

            _met[i] = ImmutableCollectionsMarshal.AsImmutableArray(met);
        }

        var writes = history.Writes;
        for (var i = 1; i < writes.Length; i++)
        {
            if (writes[i - 1].Slot == writes[i].Slot)
            {
                _edges.Add(new OrderEdge(writes[i - 1].Action, writes[i].Action, new SameThing(layout.Variable(writes[i].Slot))));
            }
        }
    }

    /// <summary>The edges.</summary>
    public List<OrderEdge> Edges => _edges;

    /// <summary>The needs that nothing in the sequence ever makes true.</summary>
    public IReadOnlyList<UnmetNeed> Unmet => _unmet;

    /// <summary>The needs of an action, each with the index of the action that makes it true; -1 where it is so from the start.</summary>
    public ImmutableArray<MetNeed> Met(int action) => _met[action];

    /// <returns>The action that makes the need true; -1 where none has to.</returns>
    private int Link(Need need, int index, ImmutableArray<StateChange> own, VariableHistory history)
    {
        foreach (var change in own)
        {
            if (need.Variable == change.Variable)
            {
                // The changes of one variable stand in a row already.
                return history.LastBefore(need.Variable, index);
            }
        }

        if (history.Find(need, index) is not { } stretch)
        {
            _unmet.Add(new UnmetNeed(index, need));
            return -1;
        }

        if (stretch.Begin is { } begin)
        {
            _edges.Add(new OrderEdge(begin, index, new Enables(need)));
        }

        if (stretch.End is { } end)
        {
            _edges.Add(new OrderEdge(index, end, new Spoils(need)));
        }

        return stretch.Begin ?? -1;
    }
}

/// <summary>A need that is never met.</summary>
/// <param name="Action">The index of the action that has it.</param>
/// <param name="Need">The need.</param>
internal readonly record struct UnmetNeed(int Action, Need Need);
