using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Bags;

namespace ProcScript.Analysis.Tests.Bags;

public class BagColouringTests
{
    /// <summary>Few holes and sorts, so that conflicts are dense; no hole now and then.</summary>
    private static readonly Gen<ImmutableArray<BaggedThing>> FewThings = Gen.Select(
        Gen.Int[0, 3],
        Gen.Int[0, 3],
        Gen.Int[0, 3],
        (hole, sort, place) => new BaggedThing(hole == 3 ? null : $"h{hole}", $"s{sort}", place)).Array[0, 9].Select(things => things.ToImmutableArray());

    [Fact]
    public void No_look_alikes_share_a_bag_and_there_are_no_more_bags_than_any_colouring_needs() => FewThings.Sample(things =>
    {
        var bags = BagColouring.Assign(things);

        Assert.All(Conflicts(things), pair => Assert.NotEqual(bags[pair.One], bags[pair.Other]));
        var least = LeastColours(things);
        Assert.Equal(least, bags.Distinct().Count());
        Assert.Equal(least, BagColouring.LeastCount(things));
    });

    [Fact]
    public void Bags_are_counted_in_the_order_in_which_they_come_into_use() => FewThings.Sample(things =>
    {
        var used = BagColouring.Assign(things).Distinct().ToList();

        Assert.Equal(Enumerable.Range(0, used.Count), used);
    });

    [Fact]
    public void Where_no_place_has_look_alikes_and_there_are_bags_enough_each_bag_empties_at_one_place()
    {
        var several = 0;
        FewThings.Where(things => OnePlaceEach(things)).Sample(
            things =>
            {
                var bags = BagColouring.Assign(things);
                Assert.All(
                    things.Select((thing, i) => (thing.Place, Bag: bags[i])).GroupBy(thing => thing.Bag),
                    bag => Assert.Single(bag.Select(thing => thing.Place).Distinct()));
                if (bags.Distinct().Count() > 1)
                {
                    Interlocked.Increment(ref several);
                }
            },
            iter: 500);
        Assert.True(several > 0, "no sample had two bags");
    }

    [Fact]
    public void One_place_keeps_together_what_the_look_alikes_of_another_leave_room_for()
    {
        // The two bolts need two bags; the caps go with the bolt of their own place.
        Assert.Equal([0, 1, 1, 0], Assign(("m8", "long", 1), ("m8", "short", 2), (null, "cap", 2), (null, "pin", 1)));
    }

    [Fact]
    public void A_sort_takes_no_second_bag_that_another_sort_still_wants()
    {
        Assert.Equal([0, 0, 1], Assign(("m8", "long", 1), ("m8", "long", 2), ("m8", "short", 3)));
    }

    [Fact]
    public void Many_sorts_of_many_holes_are_dealt_in_one_pass()
    {
        // 40,000 things; a quadratic step would not come to an end within the time that a test run may take.
        ImmutableArray<BaggedThing> things =
        [
            .. from sort in Enumerable.Range(0, 20_000)
               from hole in new[] { "m6", "m8" }
               select new BaggedThing(hole, sort.ToString(System.Globalization.CultureInfo.InvariantCulture), sort % 7),
        ];

        Assert.Equal(20_000, BagColouring.Assign(things).Distinct().Count());
    }

    private static IEnumerable<int> Assign(params (string? Hole, string Sort, int Place)[] things) =>
        BagColouring.Assign([.. things.Select(thing => new BaggedThing(thing.Hole, thing.Sort, thing.Place))]);

    private static IEnumerable<(int One, int Other)> Conflicts(ImmutableArray<BaggedThing> things) =>
        from one in Enumerable.Range(0, things.Length)
        from other in Enumerable.Range(0, one)
        where things[one].Hole is { } hole && hole == things[other].Hole && things[one].Sort != things[other].Sort
        select (one, other);

    /// <summary>The least number of colours, by trying all colourings with one colour, two colours and so on.</summary>
    internal static int LeastColours(ImmutableArray<BaggedThing> things)
    {
        var conflicts = Conflicts(things).ToLookup(pair => pair.One, pair => pair.Other);
        var colours = new int[things.Length];
        bool Extend(int next, int count) => next == things.Length || Enumerable.Range(0, count).Any(colour =>
        {
            colours[next] = colour;
            return conflicts[next].All(other => colours[other] != colour) && Extend(next + 1, count);
        });
        return Enumerable.Range(0, things.Length + 1).First(count => Extend(0, count));
    }

    private static bool OnePlaceEach(ImmutableArray<BaggedThing> things) =>
        Conflicts(things).All(pair => things[pair.One].Place != things[pair.Other].Place)
        && things.Select(thing => thing.Place).Distinct().Count() <= LeastColours(things);
}
