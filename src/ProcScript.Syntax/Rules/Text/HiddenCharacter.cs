using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>Characters in a text or a comment that nobody sees.</summary>
public sealed class HiddenCharacter : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1010", "hidden-character", "A character that nobody sees", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <summary>What turns the direction of reading.</summary>
    private static readonly ImmutableArray<(char First, char Last)> Turning = [('\u061C', '\u061C'), ('\u200E', '\u200F'), ('\u202A', '\u202E'), ('\u2066', '\u2069')];

    /// <summary>What has no width and no meaning. The joiners are left out: scripts and pictures are written with them.</summary>
    private static readonly ImmutableArray<(char First, char Last)> Empty =
        [('\u00AD', '\u00AD'), ('\u180E', '\u180E'), ('\u200B', '\u200B'), ('\u2060', '\u2065'), ('\u206A', '\u206F'), ('\uFEFF', '\uFEFF'), ('\uFFF9', '\uFFFB')];

    /// <summary>What commands a terminal or a printer; a tab and the ends of lines do not.</summary>
    private static readonly ImmutableArray<(char First, char Last)> Controls =
        [('\u0001', '\u0008'), ('\u000B', '\u000C'), ('\u000E', '\u001F'), ('\u007F', '\u009F'), ('\u2028', '\u2029')];

    private static readonly SearchValues<char> All = SearchValues.Create(
        [.. Turning.Concat(Empty).Concat(Controls).SelectMany(range => Enumerable.Range(range.First, range.Last - range.First + 1)).Select(code => (char)code)]);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "In a text or a comment stands a character that is not seen: one that turns the direction of reading, a control character of a "
            + "terminal or a printer, or one without any width.",
        Why: "What stands in the source is not what is read on the card: a turned 21 bar is read as 12 bar. Others make two texts differ that "
            + "look the same, or are obeyed by the terminal that shows them. They come along when a text is copied from elsewhere.",
        Wrong: "tool gauge \"gauge, to \u202E21 bar\"\n",
        Right: "tool gauge \"gauge, to 12 bar\"\n");

    /// <summary>The runs of such characters in a stretch of a text.</summary>
    internal static IEnumerable<TextSpan> In(string content, TextSpan stretch)
    {
        for (var at = Next(content, stretch.Start, stretch.End); at < stretch.End; at = Next(content, at, stretch.End))
        {
            var start = at;
            while (at < stretch.End && All.Contains(content[at]))
            {
                at++;
            }

            yield return TextSpan.FromBounds(start, at);
        }
    }

    /// <summary>Whether a stretch surely holds none.</summary>
    internal static bool AreNoneIn(ReadOnlySpan<char> stretch) => !stretch.ContainsAny(All);

    internal static Finding At(SourceText text, TextSpan run)
    {
        SourceSpan place = new(text.Path, run);
        var first = text.Content[run.Start];
        var (what, grade) = IsIn(Turning, first) ? ("turns the direction of reading", FixGrade.NeedsLook)
            : IsIn(Controls, first) ? ("is obeyed by terminals and printers", FixGrade.NeedsLook)
            : ("has no width", FixGrade.Safe);
        var name = string.Create(CultureInfo.InvariantCulture, $"U+{(int)first:X4}");
        return new Finding(Id, $"a character is not seen here, `{name}`, which {what}", place)
        {
            Help = "take it out, and see that what is left is what is meant",
            Fixes = [new Fix("Take it out", grade, [new TextEdit(place, "")])],
        };
    }

    private static int Next(string content, int from, int end)
    {
        var found = content.AsSpan(from, end - from).IndexOfAny(All);
        return found < 0 ? end : from + found;
    }

    private static bool IsIn(ImmutableArray<(char First, char Last)> ranges, char character) =>
        ranges.Any(range => character >= range.First && character <= range.Last);
}
