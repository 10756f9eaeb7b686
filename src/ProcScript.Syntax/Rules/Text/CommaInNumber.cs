using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A comma in a number, which may be read as two.</summary>
public sealed class CommaInNumber : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1012", "comma-in-number", "A comma within a number", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "In a figure stands a comma with digits on both sides and no blank behind it. A decimal number has a point, thousands have nothing, "
            + "and the stages of a torque have a comma with a blank behind it. In a torque it may be one with a blank, too: where what follows is a "
            + "single digit, or eight times as much and more, it looks like a fraction. Stages that are meant so have a unit each.",
        Why: "`2,5 N.m` may be two and a half, or two and then five. Whoever tightens by the other of the two breaks the bolt or leaves it loose.",
        Wrong: """
            tool wrench "torque wrench"
            fastener m4 "M4 bolt" { drive wrench  torque 2,5 N.m }
            """,
        Right: """
            tool wrench "torque wrench"
            fastener m4 "M4 bolt" { drive wrench  torque 2.5 N.m }
            fastener m10 "M10 bolt" { drive wrench  torque 20, 45 N.m }
            fastener m5 "M5 bolt" { drive wrench  torque 2 N.m, 5 N.m }
            """);

    /// <param name="text">The text.</param>
    /// <param name="numbers">Numbers of one line, all written alike.</param>
    internal static Finding At(SourceText text, ImmutableArray<WrittenNumber> numbers)
    {
        var first = numbers[0];
        List<(string Meaning, Fix Fix)> readings = [];
        if (numbers.All(number => number.IsThousands))
        {
            readings.Add(("thousands", Write(text, numbers, _ => "")));
        }

        if (numbers.All(number => number.IsDecimal))
        {
            readings.Add(("a fraction", Write(text, numbers, _ => ".")));
        }

        if (numbers.Any(number => number.IsStage) && numbers.All(number => number.IsStage || number.IsDecimal))
        {
            readings.Add(("one stage after the other", Write(text, numbers, number => !number.IsStage ? "." : number.Unit.Length > 0 ? $" {number.Unit}, " : ", ")));
        }

        return new Finding(
            Id,
            readings.Count > 1
                ? $"{Excerpt.Of(text, first.Span)} may be read in {(readings.Count > 2 ? "three" : "two")} ways"
                : first is { IsStage: true, IsDecimal: false, IsThousands: false }
                ? $"{Excerpt.Of(text, first.Span)} has no blank behind its commas: it may be taken for one number"
                : $"{Excerpt.Of(text, first.Span)} is written with a comma: a decimal number has a point, and thousands have no sign",
            new SourceSpan(text.Path, first.Span))
        {
            Help = string.Join("; ", readings.Select(reading => $"{reading.Meaning}: {char.ToLowerInvariant(reading.Fix.Title[0])}{reading.Fix.Title[1..]}")),
            Fixes = [.. readings.Select(reading => reading.Fix)],
        };
    }

    private static Fix Write(SourceText text, ImmutableArray<WrittenNumber> numbers, Func<WrittenNumber, string> sign) => new(
        $"Write {string.Join(" and ", numbers.Select(number => $"`{Written(text, number, sign(number))}`"))}",
        FixGrade.NeedsLook,
        [.. from number in numbers from comma in number.Commas select new TextEdit(new SourceSpan(text.Path, comma), sign(number))]);

    private static string Written(SourceText text, WrittenNumber number, string sign) =>
        TextEdits.Apply(text.Content, number.Span, number.Commas.Select(comma => new TextEdit(new SourceSpan(text.Path, comma), sign)));
}
