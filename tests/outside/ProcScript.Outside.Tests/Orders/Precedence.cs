using System.Globalization;
using System.Numerics;
using System.Text;
using ProcScript.Analysis;
using ProcScript.Analysis.Order;
using ProcScript.Model.Sources;

namespace ProcScript.Outside.Tests.Orders;

/// <summary>Tasks of which some must go before others, worked as a machine: each task is a part, behind the parts that go before it.</summary>
/// <param name="Count">How many tasks; they are named 1 and up.</param>
/// <param name="Pairs">Which goes before which.</param>
internal sealed record Precedence(int Count, IReadOnlyList<(int Earlier, int Later)> Pairs)
{
    /// <summary>The number of valid strips and of valid refits of the machine.</summary>
    public (BigInteger? Strips, BigInteger? Refits) CountOrders() => CountOrders(Text());

    /// <summary>The same for a library with one procedure, which must be proven.</summary>
    public static (BigInteger? Strips, BigInteger? Refits) CountOrders(string text)
    {
        var report = LibraryCheck.Run(MemorySourceStore.Of("x.proc", text), TestContext.Current.CancellationToken);
        Assert.Empty(report.Findings.Select(found => found.Finding.Message));
        var procedure = Assert.Single(report.Procedures);
        Assert.True(procedure.IsProven);
        return (ValidOrders.Of(procedure.Outcome.Strip!), ValidOrders.Of(procedure.Outcome.Refit!));
    }

    /// <summary>A precedence graph as the data files list it: task, time, direct predecessors.</summary>
    public static Precedence Read(IReadOnlyList<string[]> rows) => new(
        rows.Count,
        [
            .. from row in rows
               where row[2] != "-"
               from earlier in row[2].Split(',')
               select (Number(earlier), Number(row[0])),
        ]);

    /// <summary>A rooted tree as a list of its children; the root goes before its children.</summary>
    public static Precedence Tree(string brackets)
    {
        var pairs = new List<(int, int)>();
        var path = new Stack<int>();
        var count = 0;
        foreach (var bracket in brackets)
        {
            switch (bracket)
            {
                case '[':
                    count++;
                    if (path.TryPeek(out var parent))
                    {
                        pairs.Add((parent, count));
                    }

                    path.Push(count);
                    break;
                case ']':
                    path.Pop();
                    break;
            }
        }

        return new Precedence(count, pairs);
    }

    /// <summary>A family of the data files by its name.</summary>
    public static Precedence Family(string family, int n) => family switch
    {
        "boolean_lattice" => Steps([.. Enumerable.Repeat(2, n)]),
        "grid_2_by_n" => Steps(2, n),
        "grid_3_by_n" => Steps(3, n),
        "grid_2_by_2_by_n" => Steps(2, 2, n),
        "binary_heap" => new Precedence(n, [.. Enumerable.Range(2, n - 1).Select(i => (i / 2, i))]),
        "zigzag_fence" => new Precedence(n, [.. Enumerable.Range(1, n - 1).Select(i => i % 2 == 1 ? (i, i + 1) : (i + 1, i))]),
        "zigzag_with_pendants" => new Precedence(
            3 * n,
            [
                .. Enumerable.Range(1, n).Select(i => ((3 * i) - 2, (3 * i) - 1)),
                .. Enumerable.Range(1, n).Select(i => ((3 * i) - 1, 3 * i)),
                .. Enumerable.Range(1, n - 1).Select(i => ((3 * i) + 2, 3 * i)),
            ]),
        _ => throw new ArgumentException($"An unknown family: {family}", nameof(family)),
    };

    /// <summary>The cells of a box, each after its neighbours nearer to the corner.</summary>
    private static Precedence Steps(params int[] sides)
    {
        var count = sides.Aggregate(1, (product, side) => product * side);
        var pairs = new List<(int, int)>();
        for (var cell = 0; cell < count; cell++)
        {
            var (stride, rest) = (1, cell);
            foreach (var side in sides)
            {
                if (rest % side > 0)
                {
                    pairs.Add((cell - stride + 1, cell + 1));
                }

                rest /= side;
                stride *= side;
            }
        }

        return new Precedence(count, pairs);
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private string Text()
    {
        var before = Pairs.ToLookup(pair => pair.Later, pair => pair.Earlier);
        var text = new StringBuilder("machine tasks \"Tasks\" {\n");
        for (var task = 1; task <= Count; task++)
        {
            var behind = string.Join(", ", before[task].Select(earlier => $"t{earlier}"));
            text.Append(CultureInfo.InvariantCulture, $"  part t{task} \"task {task}\" {{{(behind.Length == 0 ? "" : $" behind {behind} ")}}}\n");
        }

        text.Append("}\nprocedure all \"All\" on tasks {\n  stage \"All\" {\n");
        foreach (var task in Sorted(before))
        {
            text.Append(CultureInfo.InvariantCulture, $"    remove t{task}\n");
        }

        return text.Append("  }\n}\n").ToString();
    }

    private List<int> Sorted(ILookup<int, int> before)
    {
        var sorted = new List<int>();
        var left = Enumerable.Range(1, Count).ToList();
        while (left.Count > 0)
        {
            var next = left.First(task => before[task].All(sorted.Contains));
            left.Remove(next);
            sorted.Add(next);
        }

        return sorted;
    }
}
