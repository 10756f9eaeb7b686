using System.Collections.Immutable;
using ProcScript.Model.Catalog;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// Tools that take off and do not fit, by English words of their titles. Common practice, no source: pullers, extractors and splitters part
/// things, trim levers, pry bars and picks lift them out, knives cut what is renewed.
/// </summary>
internal static class TakingOff
{
    private static readonly ImmutableArray<string> Words =
        [" puller ", " extractor ", " remover ", " splitter ", " separator ", " knife ", " pick ", " trim lever ", " pry bar "];

    /// <summary>Whether a tool is of no use where something goes on.</summary>
    public static bool Is(Tool tool) => TitleWords.Has(tool, Words);
}
