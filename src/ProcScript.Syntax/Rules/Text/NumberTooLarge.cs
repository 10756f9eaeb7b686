using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A number is larger than the language works with.</summary>
public sealed class NumberTooLarge : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1009", "number-too-large", "A number beyond the limit", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A number is larger than the language works with: a count of more than a million, a range of more than a thousand values, "
            + "a quantity of 16 digits or more.",
        Why: "A number of that size is a slip of the finger; no machine has a million bolts.",
        Wrong: """
            fastener m8x25 "M8 × 25 flange bolt" { thread M8x1.25  length 2500000000000000 mm }
            """,
        Right: """
            fastener m8x25 "M8 × 25 flange bolt" { thread M8x1.25  length 25 mm }
            """);

    internal static Finding Count(SourceSpan place, int largest) =>
        new(Id, string.Create(CultureInfo.InvariantCulture, $"a count may be at most {largest}"), place);

    internal static Finding Quantity(SourceSpan place) => new(Id, "a number may have at most 15 digits before its point", place);

    internal static Finding Values(SourceSpan place, int most) =>
        new(Id, string.Create(CultureInfo.InvariantCulture, $"a range may hold at most {most} values"), place);
}
