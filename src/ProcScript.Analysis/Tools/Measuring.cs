using System.Collections.Immutable;
using ProcScript.Model.Catalog;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// Tools that tell how something stands and change nothing, by English words of their titles: they prove that an energy is off, and are of no use
/// where it only comes back. Common practice, no source. Gauges that set something, such as a feeler gauge, are not among them.
/// </summary>
public static class Measuring
{
    private static readonly ImmutableArray<string> Words =
    [
        " meter ", " multimeter ", " voltmeter ", " ammeter ", " ohmmeter ", " manometer ", " thermometer ", " tester ", " detector ",
        " test leads ", " test lead ", " probe ", " probes ", " pressure gauge ",
    ];

    /// <summary>Whether a tool only measures.</summary>
    public static bool Is(Tool tool) => TitleWords.Has(tool, Words);
}
