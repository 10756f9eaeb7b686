using ProcScript.Analysis.Bolts;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bolts;

/// <summary>Bolts are turned on by an angle, and nothing says whether they serve again.</summary>
public sealed class ReuseAfterAngle : TorqueRule
{
    /// <summary>From this angle on a bolt may be meant to yield; common practice, no source.</summary>
    private const double Notable = 60;

    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC5034", "reuse-after-angle", "Bolts are turned on by an angle, and nothing says whether they serve again", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `torque` goes on by an angle of 60° or more, and the bolts are neither `stretch` nor `single use`, nor does `reuse because` "
            + "say why the old ones may go back.",
        Why: "Bolts that are turned on by an angle are often stretched for good. One that has been stretched before breaks, or holds less than it "
            + "seems to. Whoever reads the card cannot see whether the old bolts go back on purpose.",
        Wrong: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener head_bolt "M10 × 80 head bolt" { thread M10x1.5  grade 10.9  drive socket_16  torque 30 N.m + 90° }
            """,
        Right: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener head_bolt "M10 × 80 head bolt" { thread M10x1.5  grade 10.9  drive socket_16  torque 30 N.m + 90°  stretch }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(Tightening tightening)
    {
        if (!tightening.IsReuseSaid && tightening.Torque.Angles.Sum(angle => angle.BaseValue) >= Notable)
        {
            yield return new Finding(
                Id,
                $"`{tightening.Name}` is turned on by an angle, and nothing says whether the bolts serve again",
                tightening.Place,
                tightening.Torque.Print())
            {
                Help = "write `stretch` where they never do, or `reuse because \"…\"` with what the maker says",
            };
        }
    }
}
