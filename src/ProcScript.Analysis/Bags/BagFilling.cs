using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// Puts loose hardware into bags: for each stage as few as keep look-alikes apart, and left from right. A bag that the author named holds what the author put
/// there, in whatever stage, and nothing else: its name says what is in it. So the least count holds for what the author left open; of
/// look-alikes in a bag of the author's a rule speaks.
/// </summary>
internal static class BagFilling
{
    /// <summary>Fills the bags and numbers them as they come into use.</summary>
    /// <param name="pieces">What comes off, in order.</param>
    /// <param name="titleOfCard">The title of a card.</param>
    /// <param name="book">The language.</param>
    /// <param name="labelled">By the names of joints the bags that their pieces lie in already: these keep their numbers and what their labels say.</param>
    public static ImmutableArray<PlanBag> Fill(
        ImmutableArray<LooseHardware> pieces, Func<PlanPhase, int, string> titleOfCard, Wordbook book, IReadOnlyDictionary<string, PlanBag>? labelled = null)
    {
        labelled ??= FrozenDictionary<string, PlanBag>.Empty;
        var bagOf = new string[pieces.Length];
        foreach (var stage in pieces.Index().Where(piece => piece.Item.OwnBag is null && !labelled.ContainsKey(piece.Item.Joint.Name)).GroupBy(piece => (piece.Item.Phase, piece.Item.Card)))
        {
            // What goes back each into its own place lies in a bag of its own.
            foreach (var piece in stage.Where(piece => piece.Item.IsInOrder))
            {
                bagOf[piece.Index] = $"{stage.Key}/in order {piece.Index}";
            }

            foreach (var side in BySide([.. stage.Where(piece => !piece.Item.IsInOrder)]))
            {
                var open = side.ToList();
                var holes = new HoleGroups(open.Select(piece => piece.Item.Joint.Kind));
                var bags = BagColouring.Assign([.. open.Select(piece => Thing(piece.Item, holes))]);
                for (var i = 0; i < open.Count; i++)
                {
                    bagOf[open[i].Index] = $"{stage.Key}/{side.Key}/{bags[i]}";
                }
            }
        }

        var next = labelled.Values.Select(bag => bag.Number).DefaultIfEmpty().Max();
        return
        [
            .. pieces.Index()
                .GroupBy(
                    piece => labelled.GetValueOrDefault(piece.Item.Joint.Name) is { } there ? (Own: there.Name, Chosen: "", There: (PlanBag?)there)
                        : piece.Item.OwnBag is { } own ? (Own: own, Chosen: "", There: (PlanBag?)null)
                        : (Own: "", Chosen: bagOf[piece.Index], There: (PlanBag?)null),
                    piece => piece.Item)
                .Select(bag => new PlanBag(
                    bag.Key.There?.Number ?? ++next,
                    bag.Key.There?.Stage ?? string.Join(", ", bag.Select(piece => titleOfCard(piece.Phase, piece.Card)).Distinct()),
                    [.. bag.Select(piece => Line(piece, book))],
                    bag.Max(piece => piece.RefitStep),
                    bag.Key.Own)
                {
                    Side = bag.Select(piece => HardwareSide.Of(piece.Joint)).Distinct().ToList() is [var side] ? side : "",
                }),
        ];
    }

    /// <summary>
    /// Where a stage has hardware of both sides of the machine, that of the left, that of the right and that of neither go apart: bolts that are
    /// alike are worn in by then, and a bag of one side empties at one place.
    /// </summary>
    private static IEnumerable<IGrouping<string, (int Index, LooseHardware Item)>> BySide(List<(int Index, LooseHardware Item)> pieces)
    {
        var sides = pieces.Select(piece => HardwareSide.Of(piece.Item.Joint)).Where(side => side.Length > 0).Distinct().Count();
        return pieces.GroupBy(piece => sides > 1 ? HardwareSide.Of(piece.Item.Joint) : "");
    }

    private static BaggedThing Thing(LooseHardware piece, HoleGroups holes) =>
        new(holes.Of(piece.Joint.Kind), HardwareSort.Of(piece.Joint.Kind), piece.RefitCard);

    private static PlanBagLine Line(LooseHardware piece, Wordbook book) =>
        new(ItemWords.Of(piece.Joint.Kind, book), piece.Count, ItemWords.Place(piece.Joint), piece.StripStep, piece.RefitStep) { InOrder = piece.IsInOrder };
}
