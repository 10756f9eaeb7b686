using System.Collections.Immutable;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// Deals things into bags so that no two look-alikes share one, with as few bags as can be. Two things are look-alikes when they
/// have the same hole and another sort.
/// <para>
/// <b>Why the count is the least.</b> The conflicts of one hole with s sorts are a complete s-partite graph: one thing of each sort
/// makes a clique of s, so no fewer than s bags do, and a bag for each sort does. Things of different holes never conflict, so the
/// bags of one hole serve every other. Hence the least count is that of the hole with the most sorts (one, where there are things
/// and no conflicts), and it is read off in one pass: no search as in the colouring of graphs at large.
/// </para>
/// <para>
/// <b>What the spare freedom is for.</b> A sort may lie in several bags as long as enough bags stay free for the sorts of its hole
/// that are still to come; within that, things that go back at one place go together, so that a bag empties at one place. This is
/// first fit and not the best possible, except where every place is without look-alikes and there is a bag for every place: then each
/// bag has one place, for a new place then always finds a bag that is untouched and free for it. It never costs a bag.
/// </para>
/// </summary>
internal sealed class BagColouring
{
    /// <summary>So many bags of a place are remembered: looking through more would gain little and cost quadratic time.</summary>
    private const int MostRemembered = 16;

    private readonly int _count;
    private readonly Dictionary<string, Hole> _holes = new(StringComparer.Ordinal);
    private readonly Dictionary<int, List<int>> _bagsOfPlace = [];
    private int _untouched;

    private BagColouring(ImmutableArray<BaggedThing> things)
    {
        foreach (var thing in things)
        {
            if (thing.Hole is { } name)
            {
                Of(name).Coming.Add(thing.Sort);
            }
        }

        _count = things.IsEmpty ? 0 : _holes.Values.Select(hole => hole.Coming.Count).Append(1).Max();
    }

    /// <summary>The bag of each thing, counted from 0 in the order in which the bags come into use; every number up to the highest is used.</summary>
    public static ImmutableArray<int> Assign(ImmutableArray<BaggedThing> things)
    {
        var colouring = new BagColouring(things);
        return InOrderOfUse([.. things.Select(colouring.Place)]);
    }

    /// <summary>The least count of bags; 0 for nothing.</summary>
    public static int LeastCount(ImmutableArray<BaggedThing> things) => new BagColouring(things)._count;

    private int Place(BaggedThing thing)
    {
        if (!_bagsOfPlace.TryGetValue(thing.Place, out var ofPlace))
        {
            _bagsOfPlace.Add(thing.Place, ofPlace = []);
        }

        var hole = thing.Hole is { } name ? _holes[name] : null;
        var bag = Choose(thing.Sort, hole, ofPlace);
        hole?.Put(thing.Sort, bag);
        _untouched = Math.Max(_untouched, bag + 1);
        if (ofPlace.Count < MostRemembered && !ofPlace.Contains(bag))
        {
            ofPlace.Add(bag);
        }

        return bag;
    }

    private int Choose(string sort, Hole? hole, List<int> ofPlace)
    {
        foreach (var bag in ofPlace)
        {
            if (hole is null || hole.SortIn(bag) == sort || (hole.SortIn(bag) is null && hole.MayTakeAnother(sort, _count)))
            {
                return bag;
            }
        }

        if (hole is not null && !hole.MayTakeAnother(sort, _count))
        {
            return hole.FirstOf(sort);
        }

        return _untouched < _count ? _untouched : hole?.FirstFree() ?? 0;
    }

    private Hole Of(string name)
    {
        if (!_holes.TryGetValue(name, out var hole))
        {
            _holes.Add(name, hole = new Hole());
        }

        return hole;
    }

    private static ImmutableArray<int> InOrderOfUse(ImmutableArray<int> bags)
    {
        var number = new Dictionary<int, int>();
        foreach (var bag in bags)
        {
            number.TryAdd(bag, number.Count);
        }

        return [.. bags.Select(bag => number[bag])];
    }

    /// <summary>The bags as the things of one hole see them.</summary>
    private sealed class Hole
    {
        private readonly Dictionary<int, string> _sortIn = [];
        private readonly Dictionary<string, int> _firstOf = new(StringComparer.Ordinal);
        private int _free;

        /// <summary>The sorts that are not in any bag yet.</summary>
        public HashSet<string> Coming { get; } = new(StringComparer.Ordinal);

        /// <summary>The sort that lies in a bag; null where none does.</summary>
        public string? SortIn(int bag) => _sortIn.GetValueOrDefault(bag);

        public int FirstOf(string sort) => _firstOf[sort];

        /// <summary>Whether a sort may have one bag more, and the sorts to come still find one each.</summary>
        public bool MayTakeAnother(string sort, int bags) => Coming.Contains(sort) || bags - _sortIn.Count > Coming.Count;

        /// <summary>The first bag without a thing of this hole. What is taken stays taken, so the search goes on where it ended.</summary>
        public int FirstFree()
        {
            while (_sortIn.ContainsKey(_free))
            {
                _free++;
            }

            return _free;
        }

        public void Put(string sort, int bag)
        {
            _sortIn[bag] = sort;
            _firstOf.TryAdd(sort, bag);
            Coming.Remove(sort);
        }
    }
}

/// <summary>A thing to put into a bag.</summary>
/// <param name="Hole">What it fits; null where it has no look-alikes.</param>
/// <param name="Sort">What it is: among things of one hole, those of another sort are its look-alikes.</param>
/// <param name="Place">Where it goes back.</param>
internal readonly record struct BaggedThing(string? Hole, string Sort, int Place);
