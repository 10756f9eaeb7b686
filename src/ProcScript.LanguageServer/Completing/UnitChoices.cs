using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The units of what is being measured.</summary>
internal static class UnitChoices
{
    // What meters and gauges most often show.
    private static readonly ImmutableArray<string> Readings = ["V", "mm", "bar", "°C", "A", "ohm", "mbar", "psi", "min", "s", "mV", "mA", "kPa", "N·m", "L/min", "%"];

    /// <summary>Those that fit, as they are written; of a reading, which may be anything, the usual ones first.</summary>
    public static IEnumerable<CompletionItem> For(NextWord next)
    {
        var owner = next.Frames.FirstOrDefault(frame => frame.Rule is not ("unitName" or "unit" or "quantity" or "number" or "limit"));
        var figure = next.Frames.FirstOrDefault(frame => frame.Rule == "quantity");
        var isBegun = next.Frames.Any(frame => frame is { Rule: "unit", IsBegun: true });
        if (owner is null || isBegun)
        {
            return [];
        }

        var dimensions = Dimensions(owner, figure);
        var units = dimensions.IsEmpty
            ? Units.All.OrderBy(unit => Readings.IndexOf(unit.Symbol) is >= 0 and var place ? place : Readings.Length)
            : dimensions.SelectMany(Units.Of);
        return units.Select(unit => new CompletionItem(Units.SpellingOf(unit), ChoiceList.Unit) { Detail = $"{unit.Dimension.WithArticle()}" });
    }

    private static ImmutableArray<Dimension> Dimensions(WritingFrame owner, WritingFrame? figure)
    {
        // The figure belongs to the last word of the property that stands before it: `with pump add 40 mL`, `torque 30 N.m + 90°`.
        var before = figure is null ? owner.Words : owner.Words[..Math.Max(0, owner.Words.Length - figure.Words.Length)];
        return before is [.., "+"] ? [Dimension.Angle]
            : before is [.., "add" or "take" or "prevailing" or "uses"] ? PropertyUnits.Of(before[^1])
            : before is [.., "expect"] ? []
            : before is [var first, ..] ? PropertyUnits.Of(first)
            : [];
    }
}
