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
                    "'" when runs.Length == 2 => Replace("Write double quotes", FixGrade.NeedsLook, text, runs, "\""),
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

    private static string Advice(string content, TextSpan run) => content[run.Start] switch
    {
        var c when char.IsWhiteSpace(c) => "this blank is not the plain one",
        ';' => "a sentence ends by itself",
        ':' or '=' => "a property is its word and its value, as in `mass 31 kg`",
        '\'' or '`' or '\u2018' or '\u2019' or '\u00AB' or '\u00BB' => "a text stands between double quotes",
        '#' => "a comment starts with `//`",
        '*' when run.Start > 0 && content[run.Start - 1] == '/' => "a comment starts with `//` and ends with its line",
        _ => "",
    };

    private static Fix Replace(string title, FixGrade grade, SourceText text, ImmutableArray<TextSpan> runs, string by) =>
        new(title, grade, [.. runs.Select(run => new TextEdit(new SourceSpan(text.Path, run), by))]);
}
