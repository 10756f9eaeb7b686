using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Tools;

namespace ProcScript.Analysis.Tests.Tools;

public class ToolOrderTests
{
    private static readonly string[] Names = ["s10", "s13", "ext", "pliers"];

    /// <summary>A few pieces with up to two tools each, and each with some of the earlier ones before it.</summary>
    private static readonly Gen<ImmutableArray<ToolWork>> FewPieces =
        Gen.Select(Gen.Int[0, 15], Gen.Int[0, 255]).Array[1, 7].Select(rows => rows
            .Select((row, i) => new ToolWork(
                [.. Names.Where((_, tool) => (row.Item1 & (1 << tool)) != 0).Take(2)],
                Set(Enumerable.Range(0, i).Where(before => (row.Item2 & (3 << before)) == (3 << before)))))
            .ToImmutableArray());

    [Fact]
    public void An_order_keeps_what_must_go_before_what_and_no_other_changes_tools_less_often() => FewPieces.Sample(pieces =>
    {
        var order = ToolOrder.Find(pieces, null);

        Assert.Equal(Enumerable.Range(0, pieces.Length), order.Order());
        Assert.All(order, piece => Assert.All(Before(pieces[piece]), before => Assert.True(order.IndexOf(before) < order.IndexOf(piece))));
        Assert.Equal(Orders(pieces, []).Min(other => Changes(pieces, other, null)), Changes(pieces, order, null));
    });

    [Fact]
    public void The_tools_in_hand_at_the_start_count() => FewPieces.Sample(pieces =>
    {
        var order = ToolOrder.Find(pieces, ["ext"]);

        Assert.Equal(Orders(pieces, []).Min(other => Changes(pieces, other, ["ext"])), Changes(pieces, order, ["ext"]));
    });

    [Fact]
    public void Where_nothing_is_saved_the_order_stays() =>
        Assert.Equal([0, 1, 2], ToolOrder.Find([Piece("a"), Piece("a"), Piece("b")], null));

    [Fact]
    public void Too_many_ways_for_a_full_search_still_give_an_order_that_is_kept()
    {
        // Ten chains of four pieces, all with other tools in another turn: millions of sets of finished work.
        string[] tools = ["a", "b", "c", "d", "e", "f"];
        ImmutableArray<ToolWork> pieces =
        [
            .. Enumerable.Range(0, ToolOrder.MostPieces).Select(i =>
                new ToolWork([tools[((i % 4) + ((i / 4) * ((i % 3) + 1))) % tools.Length]], i % 4 == 0 ? 0 : Set([i - 1]))),
        ];

        var order = ToolOrder.Find(pieces, null);

        Assert.Equal(Enumerable.Range(0, pieces.Length), order.Order());
        Assert.All(order, piece => Assert.All(Before(pieces[piece]), before => Assert.True(order.IndexOf(before) < order.IndexOf(piece))));
        Assert.True(Changes(pieces, order, null) < Changes(pieces, [.. Enumerable.Range(0, pieces.Length)], null));
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("a a a", 0)]
    [InlineData("a b a", 2)]
    [InlineData("a - a", 0)]
    [InlineData("a+b a b a+b", 0)]
    [InlineData("a a+b a c", 2)]
    public void A_change_is_taking_up_a_tool_that_is_not_in_hand(string steps, int changes) => Assert.Equal(
        changes,
        ToolChanges.Of(steps.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(step => step == "-" ? ImmutableArray<string>.Empty : [.. step.Split('+')])));

    private static ulong Set(IEnumerable<int> pieces) => pieces.Aggregate(0UL, (set, piece) => set | (1UL << piece));

    private static IEnumerable<int> Before(ToolWork piece) => Enumerable.Range(0, ToolOrder.MostPieces).Where(before => (piece.Before & (1UL << before)) != 0);

    private static ToolWork Piece(params string[] tools) => new([.. tools], 0);

    private static int Changes(ImmutableArray<ToolWork> pieces, IEnumerable<int> order, ImmutableArray<string>? inHand)
    {
        var changes = new ToolChanges(inHand);
        foreach (var piece in order)
        {
            changes.Take(pieces[piece].Tools);
        }

        return changes.Count;
    }

    private static IEnumerable<ImmutableArray<int>> Orders(ImmutableArray<ToolWork> pieces, ImmutableArray<int> begun) =>
        begun.Length == pieces.Length
            ? [begun]
            : Enumerable.Range(0, pieces.Length)
                .Where(piece => !begun.Contains(piece) && Before(pieces[piece]).All(begun.Contains))
                .SelectMany(piece => Orders(pieces, begun.Add(piece)));
}
