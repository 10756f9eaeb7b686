using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Labels;

/// <summary>
/// Deals the bags of a job onto the labels of sheets. What does not fit one label goes on to another for the same bag, which says so: nothing is
/// cut off. What fits is estimated from the size of the letters, on the safe side.
/// </summary>
internal static class LabelPages
{
    /// <summary>The width of a letter and the height of a line, as shares of the size of the letters. Estimates for plain sans-serif letters, measured.</summary>
    private const double LetterWidth = 0.53;
    private const double LineHeight = 1.2;

    /// <summary>One point in millimetres.</summary>
    private const double Point = 25.4 / 72;

    /// <summary>The lines that stand on every label beside what is in the bag: its number, job and machine, stage, work order and date, revision.</summary>
    private const double FixedLines = 7;

    /// <summary>Kept free at the sides of a label: most printers leave some 4 mm of the sheet, and labels drift.</summary>
    public const double SidePadding = 4.5;

    /// <summary>Kept free above and below.</summary>
    public const double EndPadding = 2.5;

    /// <summary>The size of the letters on a sheet's labels, in points.</summary>
    public static double Points(LabelSheet sheet) => sheet.Height < 45 ? 6.5 : 8;

    /// <summary>The labels of the bags, in order.</summary>
    public static ImmutableArray<BagLabel> Of(ImmutableArray<PlanBag> bags, LabelSheet sheet)
    {
        var labels = ImmutableArray.CreateBuilder<BagLabel>();
        foreach (var bag in bags)
        {
            var parts = Parts(bag, sheet);
            foreach (var (part, (first, count)) in parts.Index())
            {
                var place = labels.Count % sheet.Count;
                labels.Add(new BagLabel(bag, first, count, part + 1, parts.Count, labels.Count / sheet.Count, place % sheet.Columns, place / sheet.Columns));
            }
        }

        return labels.ToImmutable();
    }

    /// <summary>The contents of a bag in pieces that fit a label each, by the index of the first line and the number of lines.</summary>
    private static List<(int First, int Count)> Parts(PlanBag bag, LabelSheet sheet)
    {
        var letter = Points(sheet) * Point;
        var perLine = (int)((sheet.Width - (2 * SidePadding)) / (letter * LetterWidth));
        var room = Math.Max(1, (int)(((sheet.Height - (2 * EndPadding)) / (letter * LineHeight)) - FixedLines));
        var parts = new List<(int First, int Count)>();
        var used = 0;
        foreach (var (index, line) in bag.Contents.Index())
        {
            var lines = ((Text(line).Length - 1) / perLine) + 1;
            if (parts.Count == 0 || used + lines > room)
            {
                parts.Add((index, 0));
                used = 0;
            }

            parts[^1] = (parts[^1].First, parts[^1].Count + 1);
            used += lines;
        }

        return parts.Count == 0 ? [(0, 0)] : parts;
    }

    /// <summary>About what a label says of a line; only its length counts.</summary>
    private static string Text(PlanBagLine line) =>
        $"{line.Count} × {line.Title}, {line.From}: off {line.StripStep}, back at {line.RefitStep}{(line.InOrder ? ", in order" : "")}";
}

/// <summary>A label for a bag, or for a part of what is in it.</summary>
/// <param name="Bag">The bag.</param>
/// <param name="First">The first of its lines that stands on this label.</param>
/// <param name="Count">How many do.</param>
/// <param name="Part">Which label of the bag it is, from 1.</param>
/// <param name="Parts">How many the bag has.</param>
/// <param name="Sheet">The sheet, from 0.</param>
/// <param name="Column">The column, from 0.</param>
/// <param name="Row">The row, from 0.</param>
internal sealed record BagLabel(PlanBag Bag, int First, int Count, int Part, int Parts, int Sheet, int Column, int Row);
