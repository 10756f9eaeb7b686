using System.Collections.Immutable;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Quantities;

/// <summary>A unit that the language does not know.</summary>
public sealed class UnknownUnit : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1201", "unknown-unit", "A unit that is not known", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The unit is not one of the language's. Factors are parted by a point: `N.m`, `lbf.ft`.",
        Why: "A figure with a doubtful unit tightens a bolt to the wrong torque. What is known for certain can be converted and printed "
            + "in both systems.",
        Wrong: """
            tool wrench "torque wrench"
            fastener m8 "M8 bolt" { drive wrench  torque 22 Nm }
            """,
        Right: """
            tool wrench "torque wrench"
            fastener m8 "M8 bolt" { drive wrench  torque 22 N.m }
            """);

    internal static Finding At(string written, ImmutableArray<string> near, SourceSpan place) =>
        new(Id, $"`{written}` is not a unit that is known here", place)
        {
            Help = DidYouMean.Help(near),
            Fixes = DidYouMean.Fixes(near, place),
        };
}
