using ProcScript.Analysis.Bolts;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A fastener whose torque cannot be judged. What is judged, and from what sources, PRC5010 says.</summary>
public sealed class StrengthNotKnown : KindRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8005", "strength-not-known", "A torque that nothing can be held against", Severity.Hint);

    /// <summary>What an author writes who has looked and found nothing.</summary>
    private const string SaidUnknown = "unknown";

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A kind with a machine thread and a torque has no `grade`, or a grade or a coating of which no strength or friction is known here. "
            + "It is told once a kind; the class of a nut is left out.",
        Why: "Then nobody holds its torque against what the bolt bears, and a slip of the pen by ten stays. Where it cannot be found out, "
            + "write `grade unknown`.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  drive socket_13  torque 22 ± 2 N.m }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(Kind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        var strength = BoltStrength.Of(kind);
        if (kind is { Category: KindCategory.Fastener, Torque: not null }
            && strength.Doubt is StrengthDoubt.NoGrade or StrengthDoubt.SteelWithoutClass or StrengthDoubt.UnknownGrade or StrengthDoubt.UnknownSurface
            && !SaidUnknown.Equals(kind.Grade, StringComparison.OrdinalIgnoreCase))
        {
            yield return new Finding(Id, $"no torque of the {kind.Title} can be judged: {strength.Why(kind)}", kind.Declared, "how much does it bear?")
            {
                Help = "write the `grade` that is marked on it and its `coating`, or `grade unknown`",
            };
        }
    }
}
