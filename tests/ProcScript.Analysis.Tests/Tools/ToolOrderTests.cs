using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Tools;

namespace ProcScript.Analysis.Tests.Tools;

public class ToolOrderTests
{
    private static readonly string[] Names = ["s10", "s13", "ext", "pliers"];

    [Fact]
    public void An_order_keeps_what_must_go_before_what() => FewPieces(2).Sample(pieces =>
    {
        var order = ToolOrder.Find(pieces, null);

        Assert.Equal(Enumerable.Range(0, pieces.Length), order.Order());
        Assert.All(order, piece => Assert.All(Before(pieces[piece]), before => Assert.True(order.IndexOf(before) < order.IndexOf(piece))));
    });

    /// <summary>With several tools to a piece it may be better to leave one; the search never does.</summary>
    [Theory]
    [InlineData(1, 0, null)]
    [InlineData(1, 0, "ext")]
    [InlineData(2, 1, null)]
    [InlineData(2, 1, "ext")]
    public void No_other_order_changes_tools_less_often_but_where_a_piece_is_better_left(int tools, int more, string? inHand) => FewPieces(tools).Sample(pieces =>
    {
        ImmutableArray<string>? hand = inHand is null ? null : [inHand];
        var least = Orders(pieces, []).Min(other => Changes(pieces, other, hand));

        Assert.InRange(Changes(pieces, ToolOrder.Find(pieces, hand), hand), least, least + more);
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

    /// <summary>A few pieces with up to so many tools each, and each with some of the earlier ones before it.</summary>
    private static Gen<ImmutableArray<ToolWork>> FewPieces(int tools) =>
        Gen.Select(Gen.Int[0, 15], Gen.Int[0, 255]).Array[1, 7].Select(rows => rows
            .Select((row, i) => new ToolWork(
                [.. Names.Where((_, tool) => (row.Item1 & (1 << tool)) != 0).Take(tools)],
                Set(Enumerable.Range(0, i).Where(before => (row.Item2 & (3 << before)) == (3 << before)))))
            .ToImmutableArray());

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
