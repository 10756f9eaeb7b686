using CsCheck;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Tests.Binding;

/// <summary>Which file sees which.</summary>
public sealed class FileReachTests
{
    [Fact]
    public void A_file_sees_what_a_walk_along_use_reaches() =>
        Gen.Select(Gen.Int[1, 90], Gen.Int[0, 1000].Array[0, 150]).Sample((count, picks) =>
        {
            var edges = picks.Chunk(2).Where(pair => pair.Length == 2).ToLookup(pair => pair[0] % count, pair => pair[1] % count);
            var files = Enumerable.Range(0, count).Select(index => KeyValuePair.Create(Name(index), Text(edges[index])));
            var sink = new FindingSink();
            var loaded = SourceFiles.Load(new MemorySourceStore(files), new BindingMemory(), sink, TestContext.Current.CancellationToken);
            var reach = FileReach.Of(UseGraph.Resolve(loaded, sink));
            for (var from = 0; from < count; from++)
            {
                var walked = Walk(from, edges);
                Assert.Equal(walked, Enumerable.Range(0, count).Where(to => reach.Sees(from, to)));
                Assert.Equal(walked, reach.From(from));
                Assert.False(reach.IsIncomplete(from));
            }
        }, iter: 60);

    [Fact]
    public void What_is_missing_is_missed_by_all_that_see_the_place_and_by_no_other()
    {
        var sink = new FindingSink();
        var files = SourceFiles.Load(
            new MemorySourceStore(
            [
                new("a.proc", "use \"b.proc\""), new("b.proc", "use \"gone.proc\""),
                new("c.proc", "use \"d.proc\""), new("d.proc", "use \"c.proc\""),
            ]),
            new BindingMemory(),
            sink,
            TestContext.Current.CancellationToken);
        var reach = FileReach.Of(UseGraph.Resolve(files, sink));
        Assert.Equal([true, true, false, false], files.All.Select(file => reach.IsIncomplete(file.Index)));
    }

    private static string Name(int index) => $"f{index:000}.proc";

    private static string Text(IEnumerable<int> uses) => string.Concat(uses.Select(to => $"use \"{Name(to)}\"\n"));

    private static SortedSet<int> Walk(int from, ILookup<int, int> edges)
    {
        var seen = new SortedSet<int> { from };
        var open = new Queue<int>([from]);
        while (open.TryDequeue(out var at))
        {
            foreach (var to in edges[at].Where(seen.Add))
            {
                open.Enqueue(to);
            }
        }

        return seen;
    }
}
