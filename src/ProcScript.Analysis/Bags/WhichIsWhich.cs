using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Catalog;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// What the cards say of loose hardware that could be mistaken for other: its look-alikes that come off on the same card or go back on
/// the same one, each with its bag.
/// </summary>
internal sealed class WhichIsWhich
{
    /// <summary>A card that names more would not be read.</summary>
    private const int MostNamed = 4;

    private readonly Dictionary<int, PlanWhich> _ofStep = [];

    /// <summary>Finds the look-alikes.</summary>
    /// <param name="pieces">What comes off loose and goes back.</param>
    /// <param name="bags">The bags that it lies in.</param>
    /// <param name="book">The language.</param>
    public WhichIsWhich(ImmutableArray<LooseHardware> pieces, ImmutableArray<PlanBag> bags, Wordbook book)
    {
        var bagOf = bags.SelectMany(bag => bag.Contents.Select(line => (line.StripStep, bag.Number)))
            .ToDictionary(line => line.StripStep, line => line.Number);
        var holes = new HoleGroups(pieces.Select(piece => piece.Joint.Kind));
        var near = new Dictionary<(PlanPhase Phase, int Card, string Hole), Neighbours>();
        foreach (var piece in pieces)
        {
            foreach (var card in Cards(piece, holes))
            {
                if (!near.TryGetValue(card, out var neighbours))
                {
                    near.Add(card, neighbours = new Neighbours(book));
                }

                neighbours.Add(piece.Joint.Kind, bagOf[piece.StripStep]);
            }
        }

        foreach (var piece in pieces)
        {
            var others = Cards(piece, holes).SelectMany(card => near[card].Others(piece.Joint.Kind)).DistinctBy(other => other.LookAlike).Take(MostNamed).ToList();
            if (others.Count > 0)
            {
                var which = new PlanWhich(
                    HardwareSort.Words(book, piece.Joint.Kind, others.Select(other => other.Kind)),
                    bagOf[piece.StripStep],
                    [.. others.Select(other => other.LookAlike)]);
                _ofStep[piece.StripStep] = which;
                _ofStep[piece.RefitStep] = which;
            }
        }
    }

    /// <summary>What to say at a step; null where nothing looks alike.</summary>
    public PlanWhich? Of(int step) => step > 0 ? _ofStep.GetValueOrDefault(step) : null;

    private static IEnumerable<(PlanPhase Phase, int Card, string Hole)> Cards(LooseHardware piece, HoleGroups holes)
    {
        if (holes.Of(piece.Joint.Kind) is { } hole)
        {
            yield return (piece.Phase, piece.Card, hole);
            yield return (PlanPhase.Refit, piece.RefitCard, hole);
        }
    }

    /// <summary>What fits, or nearly fits, one hole on one card.</summary>
    private sealed class Neighbours(Wordbook book)
    {
        private readonly OrderedDictionary<string, (Kind Kind, HashSet<int> Bags)> _sorts = new(StringComparer.Ordinal);

        public void Add(Kind kind, int bag)
        {
            if (!_sorts.TryGetValue(HardwareSort.Of(kind), out var known))
            {
                _sorts.Add(HardwareSort.Of(kind), known = (kind, []));
            }

            known.Bags.Add(bag);
        }

        public IEnumerable<(PlanLookAlike LookAlike, Kind Kind)> Others(Kind kind) =>
            _sorts.Values.Where(sort => HardwareSort.AreLookAlikes(sort.Kind, kind))
                .SelectMany(sort => sort.Bags.Select(bag => (new PlanLookAlike(HardwareSort.Words(book, sort.Kind, kind), bag), sort.Kind)))
                .Take(MostNamed);
    }
}
