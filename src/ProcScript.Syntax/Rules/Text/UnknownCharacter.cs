using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>Characters outside any text that the language does not use.</summary>
public sealed class UnknownCharacter : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1004", "unknown-character", "A character that the language does not use", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Outside quoted texts and comments stands a character that the language does not use.",
        Why: "It often comes along from another language or a word processor, as typographic quotes do. The file is read as if it were "
            + "not there.",
        Wrong: """
            tool socket_13 "13 mm socket";
            """,
        Right: """
            tool socket_13 "13 mm socket"
            """);

    /// <param name="text">The text.</param>
    /// <param name="runs">Where the same characters stand on one line.</param>
    internal static Finding At(SourceText text, ImmutableArray<TextSpan> runs)
    {
        var shown = Excerpt.Of(text, runs[0]);
        return new Finding(Id, $"{shown} is not part of the language", new SourceSpan(text.Path, runs[0]))
        {
            Help = Advice(text.Content, runs[0]),
            Fixes =
            [
                text.Content.AsSpan(runs[0].Start, runs[0].Length) switch
                {
                    var run when run.IsWhiteSpace() => Replace("Write a plain blank", FixGrade.Safe, text, runs, " "),
                    "'" or "''" or "`" or "``" or "\u2018" or "\u2019" when runs.Length == 2 => Replace("Write double quotes", FixGrade.NeedsLook, text, runs, "\""),
                    _ => Replace($"Remove {shown}", FixGrade.NeedsLook, text, runs, ""),
                },
            ],
        };
    }

    internal static Finding TypographicQuotes(SourceText text, TextSpan quoted)
    {
        SourceSpan opening = new(text.Path, new TextSpan(quoted.Start, 1));
        SourceSpan closing = new(text.Path, new TextSpan(quoted.End - 1, 1));
        return new Finding(Id, "a text stands between plain quotes, not typographic ones", new SourceSpan(text.Path, quoted))
        {
            Help = "write `\"` at both ends",
            Fixes = [new Fix("Write plain quotes", FixGrade.Safe, [new TextEdit(opening, "\""), new TextEdit(closing, "\"")])],
        };
    }

    internal static Finding SlashedSign(SourceText text, TextSpan sign)
    {
        SourceSpan place = new(text.Path, sign);
        return new Finding(Id, "`+/-` is written without its slash", place)
        {
            Help = "write `+-` or `±`",
            Fixes = [new Fix("Write `+-`", FixGrade.Safe, [new TextEdit(place, "+-")])],
        };
    }

    /// <param name="text">The text.</param>
    /// <param name="comment">What is a comment elsewhere, to the end of its line or to its closing sign.</param>
    /// <param name="opening">How long the sign is that opens it.</param>
    internal static Finding ForeignComment(SourceText text, TextSpan comment, int opening)
    {
        var sign = text.Slice(new TextSpan(comment.Start, opening));
        return new Finding(Id, $"a comment starts with `//`, not with `{sign}`", new SourceSpan(text.Path, new TextSpan(comment.Start, opening)))
        {
            Help = "write `//`; such a comment ends with its line",
            Fixes = [new Fix("Write `//`", FixGrade.NeedsLook, [.. CommentEdits(text, comment, opening)])],
        };
    }

    private static IEnumerable<TextEdit> CommentEdits(SourceText text, TextSpan comment, int opening)
    {
        const string Comment = "//";
        const string Closing = "*/";
        yield return Edit(comment.Start, opening, Comment);
        for (var line = text.LineAt(comment.Start) + 1; line < text.LineCount && text.LineSpan(line).Start < comment.End; line++)
        {
            var start = text.LineSpan(line).Start;
            while (start < comment.End && text.Content[start] is ' ' or '\t')
            {
                start++;
            }

            var isClosing = comment.End - start == Closing.Length && text.Slice(TextSpan.FromBounds(start, comment.End)) == Closing;
            var isStarred = start < comment.End && text.Content[start] == '*';
            yield return isClosing ? Edit(start, Closing.Length, Comment) : isStarred ? Edit(start, 1, Comment) : Edit(start, 0, Comment + " ");
            if (isClosing)
            {
                yield break;
            }
        }

        if (comment.Length >= opening + Closing.Length && text.Slice(TextSpan.FromBounds(comment.End - Closing.Length, comment.End)) == Closing)
        {
            var rest = text.LineSpan(text.LineAt(comment.End)).End;
            var isLast = string.IsNullOrWhiteSpace(text.Slice(TextSpan.FromBounds(comment.End, rest)));
            var blank = text.Content[comment.End - Closing.Length - 1] == ' ' ? 1 : 0;
            yield return Edit(comment.End - Closing.Length - blank, Closing.Length + blank, isLast ? "" : "\n");
        }

        TextEdit Edit(int start, int length, string by) => new(new SourceSpan(text.Path, new TextSpan(start, length)), by);
    }

    /// <param name="text">The text.</param>
    /// <param name="dash">A dash that is longer than a minus.</param>
    /// <param name="isRange">Whether it stands between two numbers.</param>
    internal static Finding Dash(SourceText text, TextSpan dash, bool isRange)
    {
        var place = new SourceSpan(text.Path, dash);
        var sign = isRange ? ".." : "-";
        return new Finding(Id, isRange ? $"a range is written with `..`, not with {Excerpt.Of(text, dash)}" : $"{Excerpt.Of(text, dash)} is no minus", place)
        {
            Help = $"write `{sign}`",
            Fixes = [new Fix($"Write `{sign}`", FixGrade.NeedsLook, [new TextEdit(place, isRange ? Spaced(text, dash, sign) : sign)])],
        };
    }

    private static string Spaced(SourceText text, TextSpan dash, string sign) =>
        (text.Content[dash.Start - 1] == ' ' ? "" : " ") + sign + (text.Content[dash.End] == ' ' ? "" : " ");

    private static string Advice(string content, TextSpan run) => content[run.Start] switch
    {
        var c when char.IsWhiteSpace(c) => "this blank is not the plain one",
        ';' => "a sentence ends by itself",
        ':' or '=' => "a property is its word and its value, as in `mass 31 kg`",
        '\'' or '`' or '\u2018' or '\u2019' or '\u00AB' or '\u00BB' => "a text stands between double quotes",
        _ => "",
    };

    private static Fix Replace(string title, FixGrade grade, SourceText text, ImmutableArray<TextSpan> runs, string by) =>
        new(title, grade, [.. runs.Select(run => new TextEdit(new SourceSpan(text.Path, run), by))]);
}
