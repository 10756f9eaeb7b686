using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Catalog;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// Puts loose hardware into bags: one bag a stage, and one more for every further kind of fastener that has the thread of one that
/// is in already: such look-alikes are told apart by nothing but their bag.
/// </summary>
internal static class BagFilling
{
    /// <summary>Fills the bags. <paramref name="pieces"/> are in the order in which they come off.</summary>
    public static ImmutableArray<PlanBag> Fill(IEnumerable<LooseHardware> pieces, Func<PlanPhase, int, string> titleOfCard)
    {
        var bags = ImmutableArray.CreateBuilder<PlanBag>();
        foreach (var stage in pieces.GroupBy(piece => (piece.Phase, piece.Card)))
        {
            foreach (var bag in Split(stage))
            {
                bags.Add(new PlanBag(
                    bags.Count + 1,
                    titleOfCard(stage.Key.Phase, stage.Key.Card),
                    [.. bag.Select(Line)],
                    bag.Max(piece => piece.RefitStep)));
            }
        }

        return bags.ToImmutable();
    }

    /// <summary>First fit: the bag of a fastener is its kind's place among the kinds of its thread; all else goes into the first.</summary>
    private static IEnumerable<IGrouping<int, LooseHardware>> Split(IEnumerable<LooseHardware> pieces)
    {
        var kindsByThread = new Dictionary<string, List<Kind>>(StringComparer.OrdinalIgnoreCase);
        return pieces.Select(piece => (Piece: piece, Bag: BagOf(piece.Joint.Kind, kindsByThread)))
            .ToList()
            .GroupBy(placed => placed.Bag, placed => placed.Piece)
            .OrderBy(bag => bag.Key);
    }

    private static int BagOf(Kind kind, Dictionary<string, List<Kind>> kindsByThread)
    {
        if (kind.Category != KindCategory.Fastener || kind.Thread is not { } thread)
        {
            return 0;
        }

        if (!kindsByThread.TryGetValue(thread, out var kinds))
        {
            kindsByThread.Add(thread, kinds = []);
        }

        var place = kinds.FindIndex(known => known.Name == kind.Name);
        if (place < 0)
        {
            place = kinds.Count;
            kinds.Add(kind);
        }

        return place;
    }

    private static PlanBagLine Line(LooseHardware piece) =>
        new(piece.Joint.Kind.Title, piece.Count, ItemWords.Place(piece.Joint), piece.StripStep, piece.RefitStep);
}
