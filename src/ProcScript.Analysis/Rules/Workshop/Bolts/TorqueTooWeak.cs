using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bolts;

/// <summary>A torque leaves a graded bolt next to loose.</summary>
public sealed class TorqueTooWeak : TorqueRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5011", "torque-too-weak", "A torque uses hardly any of the bolt's strength", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "By thread, grade and surface, the most that the torque's tolerance allows makes less than a fifth of the bolt's proof load, "
            + "where usual tables aim at three quarters. A fifth (`limits.weakTorque`) is common practice, no source. A torque with an angle after it is not judged.",
        Why: "A bolt holds by being stretched. One that is hardly stretched works itself loose, and a graded bolt is mostly there because it "
            + "has to hold. Often the unit is wrong (lbf·in for lbf·ft), or the thread. There are good reasons as well: a bolt into plastic, a "
            + "trim bolt, one that only locates. Then allow the finding with that reason, or leave out a grade that nothing depends on.",
        Wrong: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener m10x30 "M10 × 30 bolt" { thread M10x1.5  grade 8.8  drive socket_16  torque 44 lbf.in }
            """,
        Right: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener m10x30 "M10 × 30 bolt" { thread M10x1.5  grade 8.8  drive socket_16  torque 33 lbf.ft }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(Tightening tightening)
    {
        var (torque, unit) = (tightening.Torque, tightening.Torque.Final.Unit);
        if (tightening.Band is { } band && band.IsTooWeak(torque))
        {
            yield return new Finding(
                Id,
                $"`{tightening.Name}` is hardly tightened: {torque.Print()} on {BoltPhrases.Name(tightening, band)}, where "
                    + $"{BoltPhrases.Torque(band.Least, unit)} makes {BoltPhrases.Share(band.WeakShare)} of its proof load of {BoltPhrases.ProofLoad(band.Bolt)} "
                    + $"({BoltPhrases.Factor(band.Factor.Low, band.Factor)})",
                tightening.Place,
                $"less than {BoltPhrases.Share(band.WeakShare)} of proof load")
            {
                Related = TorqueBeyondBolt.OfKind(tightening),
                Help = "compare torque and unit with the maker's data; where so little is meant, allow the finding and say why",
            };
        }
    }
}
