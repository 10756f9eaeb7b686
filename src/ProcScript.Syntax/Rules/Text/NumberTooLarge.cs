using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A number is larger than the language works with.</summary>
public sealed class NumberTooLarge : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1009", "number-too-large", "A number that is too large", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A number is larger than the language works with.",
        Why: "A number of that size is a slip of the finger: no joint has a million bolts.",
        Wrong: """fastener m8 "M8 bolt" { length 25000000000000000000 mm }""",
        Right: """fastener m8 "M8 bolt" { length 25 mm }""");

    internal static Finding Count(SourceSpan place, int largest) =>
        new(Id, string.Create(CultureInfo.InvariantCulture, $"A count may be at most {largest}"), place);

    internal static Finding Number(SourceSpan place) => new(Id, "A number may have at most 15 digits before the point", place);
}
