using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Quantities;

/// <summary>Nought pieces of something.</summary>
public sealed class CountOfZero : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1205", "count-of-zero", "Nought pieces", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint, a set of seals, a number of people or a part of a joint counts zero.",
        Why: "Nought bolts hold nothing. The true number goes on the card, into the bag and on the order list.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 0 pin as trim_pins } }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 2 pin as trim_pins } }
            """);

    internal static Finding At(string what, SourceSpan place) =>
        new(Id, $"{what} has a count of 0", place) { Help = "write how many there are" };
}
