using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A word stands where the language has no place for it, or one is missing.</summary>
public sealed class UnexpectedText : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1001", "unexpected-text", "A word out of place, or one that is missing", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A word stands where the language has no place for it, or a word that belongs here is missing.",
        Why: "What was meant is unknown, so nothing of that sentence can be checked. The rest of the file is read all the same.",
        Wrong: """
            fastener m8x25 "M8 × 25 flange bolt" { thread M8x1.25 }

            machine pump "Pump" {
              part cover "cover" { held by 4 m8x25 cover_bolts }
            }
            """,
        Right: """
            fastener m8x25 "M8 × 25 flange bolt" { thread M8x1.25 }

            machine pump "Pump" {
              part cover "cover" { held by 4 m8x25 as cover_bolts }
            }
            """);

    internal static Finding At(SourceText text, TextSpan found, string expected, string advice) =>
        new(Id, $"{Excerpt.Of(text, found)} cannot stand here", Place(text, found), $"expected {expected}") { Help = advice };

    internal static Finding EndOfFile(SourceText text, TextSpan last, string expected) =>
        new(Id, $"the file ends too early, behind {Excerpt.Of(text, last)}", Place(text, last), $"expected {expected}");

    internal static Finding MissingBefore(SourceText text, TextSpan next, string what, string? word) =>
        new(Id, $"{what} is missing before {Excerpt.Of(text, next)}", Place(text, next))
        {
            Fixes = word is null ? [] : [Insert(text, next.Start, word, NeedsBlank(word) ? word + " " : word)],
        };

    internal static Finding MissingHead(SourceText text, TextSpan brace, IReadOnlyList<string> what, string? words) =>
        new(Id, $"{string.Join(" and ", what)} {(what.Count > 1 ? "are" : "is")} missing before this block", Place(text, brace))
        {
            Fixes = words is null ? [] : [Insert(text, brace.Start, words, words + " ")],
        };

    internal static Finding MissingBehind(SourceText text, TextSpan previous, string what, string? word) =>
        new(Id, $"{what} is missing behind {Excerpt.Of(text, previous)}", Place(text, previous))
        {
            Fixes = word is null ? [] : [Insert(text, previous.End, word, NeedsBlank(word) ? " " + word : word)],
        };

    /// <param name="text">The text.</param>
    /// <param name="found">The word.</param>
    /// <param name="isUnknown">Whether it is no word of the language at all.</param>
    /// <param name="keywords">What may be meant.</param>
    internal static Finding Misspelt(SourceText text, TextSpan found, bool isUnknown, IReadOnlyList<string> keywords) =>
        new(
            Id,
            isUnknown ? $"{Excerpt.Of(text, found)} is not a word of the language" : $"{Excerpt.Of(text, found)} cannot stand here",
            Place(text, found),
            $"did you mean {string.Join(" or ", keywords.Select(word => $"`{word}`"))}?")
        {
            Help = $"write {string.Join(" or ", keywords.Select(word => $"`{word}`"))}",
            Fixes = [.. keywords.Select(word => new Fix($"Write `{word}`", FixGrade.NeedsLook, [new TextEdit(Place(text, found), word)]))],
        };

    internal static Finding Surplus(SourceText text, TextSpan found) =>
        new(Id, $"{Excerpt.Of(text, found)} does not belong here", Place(text, found))
        {
            Help = "without it the rest makes sense",
            Fixes = [new Fix($"Remove {Excerpt.Of(text, found)}", FixGrade.NeedsLook, [new TextEdit(Place(text, found), "")])],
        };

    internal static Finding ClosesNothing(SourceText text, TextSpan brace) =>
        new(Id, "this `}` closes no block", Place(text, brace))
        {
            Help = "remove it, or write the `{` that opens its block",
            Fixes = [new Fix("Remove the `}`", FixGrade.NeedsLook, [new TextEdit(Place(text, brace), "")])],
        };

    internal static Finding OpensNothing(SourceText text, TextSpan brace) =>
        new(Id, "this `{` opens no block: another stands right before it", Place(text, brace))
        {
            Help = "one brace opens a block",
            Fixes = [new Fix("Remove the `{`", FixGrade.NeedsLook, [new TextEdit(Place(text, brace), "")])],
        };

    internal static Finding GivenUp(SourceText text, TextSpan next) =>
        new(Id, "the file is not read from here on: too many words before cannot stand where they do", Place(text, next))
        {
            Help = "fix the first findings, or take this file out of the library if it is no ProcScript",
        };

    internal static Finding More(SourceSpan last, int count) =>
        new(Id, string.Create(CultureInfo.InvariantCulture, $"{count} more findings of this file are not listed"), last)
        {
            Help = "fix the first ones: what is left of them is listed then",
        };

    private static bool NeedsBlank(string word) => char.IsLetter(word[0]) || word[0] is '_' or '"' || word is "{" or "(" or ",";

    private static Fix Insert(SourceText text, int position, string word, string edit) =>
        new($"Insert `{word}`", FixGrade.NeedsLook, [new TextEdit(Place(text, new TextSpan(position, 0)), edit)]);

    private static SourceSpan Place(SourceText text, TextSpan span) => new(text.Path, span);
}
