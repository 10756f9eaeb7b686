using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Stripping;

/// <summary>What does not go back: what the author names, and what goes with it.</summary>
internal sealed class DiscardedItems
{
    private readonly ImmutableArray<Discard>.Builder _discards = ImmutableArray.CreateBuilder<Discard>();
    private readonly HashSet<MachineItem> _items = [];

    /// <summary>What the author names, in order.</summary>
    public ImmutableArray<Discard> Discards => _discards.ToImmutable();

    /// <summary>All that does not go back; it grows as items are added.</summary>
    public IReadOnlySet<MachineItem> Items => _items;

    /// <summary>Adds an item with what goes with it: a part with its joints and all inside it, a joint with its covers.</summary>
    public void Add(Discard discard)
    {
        _discards.Add(discard);
        var open = new Stack<MachineItem>([discard.Item]);
        while (open.TryPop(out var item))
        {
            if (_items.Add(item))
            {
                foreach (var inside in Inside(item))
                {
                    open.Push(inside);
                }
            }
        }
    }

    private static IEnumerable<MachineItem> Inside(MachineItem item) => item switch
    {
        Part part => [.. part.Children, .. part.Joints],
        Joint joint => joint.Covers,
        _ => [],
    };
}
