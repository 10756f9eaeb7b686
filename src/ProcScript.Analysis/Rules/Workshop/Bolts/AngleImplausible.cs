using ProcScript.Analysis.Bolts;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bolts;

/// <summary>An angle of tightening is too small to turn or so large that the bolt breaks.</summary>
public sealed class AngleImplausible : TorqueRule
{
    /// <summary>The least angle that a gauge and a hand can be trusted with.</summary>
    private const double Least = 15;

    /// <summary>The most that all angles together may turn.</summary>
    private const double Most = 360;

    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5015", "angle-implausible", "An angle of tightening that nobody can mean", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An angle after the torque is less than 15°, or all angles after it come to more than 360°. Both limits are common practice, no source.",
        Why: "Less than 15°, a quarter of a hexagon's flat, is lost in the play of socket and ratchet. A full turn further stretches the bolt by a whole "
            + "pitch, which few bolts bear. Mostly a digit is missing or one too many: 3° for 30°, 900° for 90°.",
        Wrong: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener head_bolt "M10 × 80 head bolt" { thread M10x1.5  grade 10.9  drive socket_16  torque 35 N.m + 900°  stretch }
            """,
        Right: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener head_bolt "M10 × 80 head bolt" { thread M10x1.5  grade 10.9  drive socket_16  torque 35 N.m + 90°  stretch }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(Tightening tightening)
    {
        var angles = tightening.Torque.Angles;
        if (angles.FirstOrDefault(angle => angle.BaseValue < Least) is { } small)
        {
            yield return At(tightening, $"{small.Print()}, and less than 15° is lost in the play of the tools", "hardly an angle");
        }
        else if (angles.Sum(angle => angle.BaseValue) > Most)
        {
            var together = angles.Length > 1 ? " together" : "";
            yield return At(
                tightening,
                $"{string.Join(" + ", angles.Select(angle => angle.Print()))}{together}, and more than a full turn stretches a bolt by more than its pitch",
                "more than a full turn");
        }
    }

    private static Finding At(Tightening tightening, string what, string label) =>
        new(Id, $"`{tightening.Name}` is turned on by an angle that nobody can mean: {what}", tightening.Place, label)
        {
            Help = "compare the angle with the maker's data; a digit may be missing or one too many",
        };
}
