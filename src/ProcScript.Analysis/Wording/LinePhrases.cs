using System.Globalization;
using ProcScript.Analysis.Reading;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>Places in words, for where a sentence has to name one.</summary>
internal static class LinePhrases
{
    /// <summary>The line, seen from another place: <c>line 14</c>, or <c>line 14 of seat-out.proc</c> where that is another file.</summary>
    public static string Of(SourceSpan place, SourceSpan from, SeenLibrary library)
    {
        var line = (library.Around(place)!.Text.LineAt(place.Span.Start) + 1).ToString(CultureInfo.InvariantCulture);
        return place.Path == from.Path ? $"line {line}" : $"line {line} of {place.Path}";
    }
}
