using System.Collections.Immutable;

namespace ProcScript.Model.Binding.Files;

/// <summary>
/// Which file sees which through <c>use</c>, however far. Held as one set of bits for every group of files that use each other in a round,
/// so that a library of ten thousand files costs a few megabytes and a question costs one look.
/// </summary>
internal sealed class FileReach
{
    private readonly UseGraph _graph;
    private readonly int[] _group;
    private readonly ulong[][] _seenBy;
    private readonly bool[] _broken;

    private FileReach(UseGraph graph, int[] group, ulong[][] seenBy, bool[] broken)
    {
        _graph = graph;
        _group = group;
        _seenBy = seenBy;
        _broken = broken;
    }

    /// <summary>Works out the reach of every file.</summary>
    public static FileReach Of(UseGraph graph)
    {
        var count = graph.Uses.Length;
        var (group, order) = Groups(graph);
        var words = (count + 63) / 64;
        var seenBy = new ulong[order.Count][];
        for (var number = 0; number < order.Count; number++)
        {
            seenBy[number] = new ulong[words];
        }

        // Tarjan's numbers: a group's uses have smaller numbers than the group itself. So users first is from the highest down.
        var broken = new bool[order.Count];
        for (var number = order.Count - 1; number >= 0; number--)
        {
            var bits = seenBy[number];
            foreach (var file in order[number])
            {
                bits[file >> 6] |= 1UL << file;
            }

            foreach (var target in Targets(number))
            {
                for (var word = 0; word < words; word++)
                {
                    seenBy[target][word] |= bits[word];
                }
            }
        }

        for (var number = 0; number < order.Count; number++)
        {
            broken[number] = order[number].Any(file => graph.Broken[file]) || Targets(number).Any(target => broken[target]);
        }

        return new FileReach(graph, group, seenBy, broken);

        IEnumerable<int> Targets(int number) => order[number]
            .SelectMany(file => graph.Uses[file])
            .Select(edge => group[edge.Target.Index])
            .Where(target => target != number);
    }

    /// <summary>Whether the file at one index sees the declarations of the file at another.</summary>
    public bool Sees(int from, int target) => (_seenBy[_group[target]][from >> 6] >> (from & 63) & 1) != 0;

    /// <summary>The files that see the file at that index: a bit a file.</summary>
    public ReadOnlySpan<ulong> SeenBy(int target) => _seenBy[_group[target]];

    /// <summary>Whether declarations may be missing from the reach of the file for a reason that is reported already.</summary>
    public bool IsIncomplete(int from) => _broken[_group[from]];

    /// <summary>Every file that the file sees, itself included, in ordinal order.</summary>
    public ImmutableArray<int> From(int from)
    {
        var seen = new SortedSet<int> { from };
        var open = new Stack<int>([from]);
        while (open.TryPop(out var file))
        {
            foreach (var edge in _graph.Uses[file])
            {
                if (seen.Add(edge.Target.Index))
                {
                    open.Push(edge.Target.Index);
                }
            }
        }

        return [.. seen];
    }

    /// <summary>Tarjan's strongly connected components, on a stack of its own.</summary>
    private static (int[] Group, List<List<int>> Order) Groups(UseGraph graph)
    {
        var count = graph.Uses.Length;
        var (number, low, group) = (new int[count], new int[count], new int[count]);
        Array.Fill(group, -1);
        var order = new List<List<int>>();
        var open = new Stack<int>();
        var path = new Stack<(int File, int Next)>();
        var counter = 0;
        for (var root = 0; root < count; root++)
        {
            if (number[root] == 0)
            {
                Enter(root);
            }

            while (path.TryPop(out var at))
            {
                if (at.Next < graph.Uses[at.File].Length)
                {
                    path.Push((at.File, at.Next + 1));
                    var target = graph.Uses[at.File][at.Next].Target.Index;
                    if (number[target] == 0)
                    {
                        Enter(target);
                    }
                    else if (group[target] < 0)
                    {
                        low[at.File] = Math.Min(low[at.File], number[target]);
                    }

                    continue;
                }

                if (path.TryPeek(out var above))
                {
                    low[above.File] = Math.Min(low[above.File], low[at.File]);
                }

                if (low[at.File] == number[at.File])
                {
                    Close(at.File);
                }
            }
        }

        return (group, order);

        void Enter(int file)
        {
            number[file] = low[file] = ++counter;
            open.Push(file);
            path.Push((file, 0));
        }

        void Close(int root)
        {
            var members = new List<int>();
            int file;
            do
            {
                file = open.Pop();
                group[file] = order.Count;
                members.Add(file);
            }
            while (file != root);
            order.Add(members);
        }
    }
}
