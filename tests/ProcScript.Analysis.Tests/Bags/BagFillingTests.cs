using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Bags;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Bags;

public class BagFillingTests
{
    private static readonly Kind Long = Bolt("m8x60", "M8x1.25");
    private static readonly Kind Short = Bolt("m8x25", "M8x1.25");
    private static readonly Kind Thin = Bolt("m6x16", "M6x1");
    private static readonly Kind Pin = new("pin", "pin", KindCategory.Clip, default);
    private static readonly Kind Screw = Bolt("screw", null);
    private static readonly Kind[] Kinds = [Long, Short, Thin, Pin, Screw, Bolt("m6x20", "M6x1"), Bolt("m8x30", "m8X1.25")];

    [Fact]
    public void Hardware_of_one_stage_shares_a_bag() =>
        Assert.Equal(["1: 4 × m8x60, 10 × pin, 2 × m6x16, 1 × screw"], Fill((0, Long, 4), (0, Pin, 10), (0, Thin, 2), (0, Screw, 1)));

    [Fact]
    public void Each_stage_has_a_bag_of_its_own() =>
        Assert.Equal(["1: 4 × m8x60", "2: 4 × m8x60"], Fill((0, Long, 4), (1, Long, 4)));

    [Fact]
    public void Look_alikes_never_share_a_bag() =>
        Assert.Equal(["1: 4 × m8x60, 3 × pin, 1 × m8x60", "2: 2 × m8x25"], Fill((0, Long, 4), (0, Short, 2), (0, Pin, 3), (0, Long, 1)));

    [Fact]
    public void Left_and_right_never_share_a_bag_and_what_is_of_neither_has_its_own()
    {
        LooseHardware[] pieces = [At("left", 1), At("right edge", 2), At("rear", 3), At("front, left", 4), At("left and right", 5)];

        Assert.Equal(["left 1 4", "right 2", " 3 5"], BagFilling.Fill([.. pieces], (_, _) => "Trim", Wordbook.English).Select(bag => $"{bag.Side} {string.Join(' ', bag.Contents.Select(line => line.StripStep))}"));
    }

    [Fact]
    public void Where_only_one_side_comes_off_nothing_is_kept_apart() =>
        Assert.Equal(["1 2"], BagFilling.Fill([At("left", 1), At("rear", 2)], (_, _) => "Trim", Wordbook.English).Select(bag => $"{bag.Side}{string.Join(' ', bag.Contents.Select(line => line.StripStep))}"));

    [Fact]
    public void In_a_bag_of_the_author_they_may_meet() => Assert.Equal(
        [("A", "")],
        BagFilling.Fill([At("left", 1) with { OwnBag = "A" }, At("right", 2) with { OwnBag = "A" }], (_, _) => "Trim", Wordbook.English).Select(bag => (bag.Name, bag.Side)));

    [Theory]
    [InlineData("bolts[left]", "right pillar", "left")]
    [InlineData("foot_bolt[front, right]", "foot", "right")]
    [InlineData("bolts", "door[left]", "left")]
    [InlineData("bolts", "Tür links vorn", "left")]
    [InlineData("bolts", "porte, côté droit", "right")]
    [InlineData("bolts", "drzwi, lewa strona", "left")]
    [InlineData("bolts", "puerta izquierda", "left")]
    [InlineData("bolts", "left and right door", "")]
    [InlineData("bright_bolts", "leftmost edge", "")]
    public void The_nearest_words_say_the_side(string name, string part, string side) => Assert.Equal(side, HardwareSide.Of(JointOf(Pin, 1, name, part)));

    [Fact]
    public void A_thread_written_in_another_case_is_the_same_thread() =>
        Assert.Equal(["1: 1 × m8x60", "2: 1 × m8x30"], Fill((0, Long, 1), (0, Kinds[^1], 1)));

    [Fact]
    public void A_bag_is_empty_once_the_last_of_it_is_back() =>
        Assert.Equal(200, BagFilling.Fill([Pieces(0, Pin, 1, 1) with { RefitStep = 200 }, Pieces(0, Pin, 2, 2)], (_, _) => "Trim", Wordbook.English)[0].EmptyAt);

    [Fact]
    public void A_bag_that_the_author_names_holds_what_the_author_puts_in_and_nothing_else()
    {
        LooseHardware[] pieces = [Pieces(0, Pin, 1, 1) with { OwnBag = "A" }, Pieces(0, Pin, 2, 2), Pieces(1, Pin, 3, 3) with { OwnBag = "A" }];

        var bags = BagFilling.Fill([.. pieces], (_, card) => card == 0 ? "Trim" : "Seat", Wordbook.English);

        Assert.Equal(["1 A Trim, Seat 1 3", "2  Trim 2"], bags.Select(bag =>
            $"{bag.Number} {bag.Name} {bag.Stage} {string.Join(' ', bag.Contents.Select(line => line.StripStep))}"));
    }

    [Fact]
    public void Any_hardware_is_bagged_once_in_its_stage_and_apart_from_its_look_alikes() => AnyHardware.Sample(pieces =>
    {
        var bags = BagFilling.Fill(pieces, (_, card) => "abc"[card].ToString(), Wordbook.English);
        var kinds = pieces.ToDictionary(piece => piece.StripStep, piece => piece.Joint.Kind);

        Assert.Equal(Enumerable.Range(1, bags.Length), bags.Select(bag => bag.Number));
        Assert.Equal(
            pieces.Select(piece => (piece.StripStep, piece.Count)),
            bags.SelectMany(bag => bag.Contents.Select(line => (line.StripStep, line.Count))).OrderBy(line => line.StripStep));
        foreach (var bag in bags)
        {
            Assert.Equal(bag.Contents.Max(line => line.RefitStep), bag.EmptyAt);
            var own = pieces.Where(piece => bag.Contents.Any(line => line.StripStep == piece.StripStep)).ToList();
            Assert.All(own, piece => Assert.Equal(bag.Name, piece.OwnBag ?? ""));
            if (bag.Name.Length == 0)
            {
                Assert.Equal([bag.Stage], own.Select(piece => "abc"[piece.Card].ToString()).Distinct());
                var fastened = bag.Contents.Select(line => kinds[line.StripStep]).Where(kind => kind.Thread is not null).Distinct();
                Assert.All(fastened.GroupBy(kind => kind.Thread!.ToUpperInvariant()), alike => Assert.Single(alike));
            }
        }
    });

    /// <summary>
    /// The least count with the author's bags: those, and for what is left of each stage the least number of colours that any colouring
    /// takes, found by trying all.
    /// </summary>
    [Fact]
    public void With_bags_of_the_author_there_are_no_more_others_than_any_colouring_of_the_rest_needs() => AnyHardware.Sample(pieces =>
    {
        var few = pieces.Take(8).ToImmutableArray();
        var bags = BagFilling.Fill(few, (_, card) => "abc"[card].ToString(), Wordbook.English);

        Assert.Equal(few.Select(piece => piece.OwnBag).OfType<string>().Distinct().Count(), bags.Count(bag => bag.Name.Length > 0));
        Assert.Equal(
            few.Where(piece => piece.OwnBag is null)
                .GroupBy(piece => piece.Card)
                .Sum(stage => BagColouringTests.LeastColours(
                    [.. stage.Select(piece => new BaggedThing(piece.Joint.Kind.Thread?.ToUpperInvariant(), piece.Joint.Kind.Name, 0))])),
            bags.Count(bag => bag.Name.Length == 0));
    });

    private static readonly Gen<ImmutableArray<LooseHardware>> AnyHardware =
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, Kinds.Length - 1].Select(i => Kinds[i]), Gen.Int[1, 12], Gen.Int[0, 5]).Array[1, 30].Select(rows => rows
            .OrderBy(row => row.Item1)
            .Select((row, i) => Pieces(row.Item1, row.Item2, row.Item3, i + 1) with { OwnBag = row.Item4 < 2 ? "AB"[row.Item4].ToString() : null })
            .ToImmutableArray());

    private static IEnumerable<string> Fill(params (int Stage, Kind Kind, int Count)[] pieces) =>
        BagFilling.Fill([.. pieces.Select((piece, i) => Pieces(piece.Stage, piece.Kind, piece.Count, i + 1))], (_, _) => "Trim", Wordbook.English)
            .Select(bag => $"{bag.Number}: {string.Join(", ", bag.Contents.Select(line => $"{line.Count} × {line.Title}"))}");

    private static LooseHardware Pieces(int stage, Kind kind, int count, int step) =>
        new(PlanPhase.Strip, stage, JointOf(kind, count), count, step, 100 - step, stage);

    private static LooseHardware At(string place, int step) =>
        new(PlanPhase.Strip, 0, JointOf(Pin, 1, part: place), 1, step, 100 - step, 0);

    private static Joint JointOf(Kind kind, int count, string? name = null, string part = "panel") => new()
    {
        Name = name ?? kind.Name,
        Title = kind.Title,
        Declared = default,
        Index = 0,
        Role = JointRole.Held,
        Count = count,
        Kind = kind,
        Owner = new Part { Name = part, Title = part, Declared = default(SourceSpan), Index = 0 },
    };

    private static Kind Bolt(string name, string? thread) => new(name, name, KindCategory.Fastener, default) { Thread = thread };
}
