using System.Collections.Immutable;
using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bolts;

/// <summary>A torque stretches the bolt beyond its proof load.</summary>
public sealed class TorqueBeyondBolt : TorqueRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5010", "torque-beyond-bolt", "A torque is more than the bolt bears", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Thread and grade give the proof load of the bolt (ISO 898-1, ISO 3506-1, SAE J429), and T = K·d·F the torque that reaches it. The "
            + "most that the torque's tolerance allows goes beyond that, or beyond the share of it in `limits.strongTorque`. K is 0.20 for a dry "
            + "thread, 0.15 to 0.18 with `oiled`, 0.14 to 0.20 with `thread locker`, 0.16 to 0.22 plated, 0.15 to 0.19 with cadmium, 0.15 to 0.22 "
            + "phosphated, 0.12 to 0.32 with zinc flake, 0.10 to 0.16 with anti-seize, 0.12 waxed, and 0.14 to 0.25 on stainless steel, each from "
            + "sources that differ; the highest of a band is reckoned with. Of a torque with an angle after it, only the torque is judged. "
            + "Where grade or surface are not known, as of nuts, the torque is held against the strongest bolt of the thread (12.9; of inch "
            + "threads a socket screw of alloy steel) with the highest K of all, 0.35: no bolt bears more than that.",
        Why: "Beyond proof load a bolt keeps a set: it does not clamp as it should, breaks later, and must not serve again. Torque scatters "
            + "the preload by a quarter to a third either way, so tables aim at three quarters of proof load. A torque that reaches all of "
            + "it mostly stems from a wrong unit, a wrong line of the table, a wrong grade, or dry figures on an oiled thread.",
        Wrong: """
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 40 ± 4 N.m }
            """,
        Right: """
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(Tightening tightening)
    {
        var (torque, unit) = (tightening.Torque, tightening.Torque.Final.Unit);
        if (tightening.Band is { } band && band.IsBeyond(torque))
        {
            yield return new Finding(
                Id,
                $"`{tightening.Name}` is tightened beyond what its bolt bears: {torque.Print()} on {BoltPhrases.Name(tightening, band)}, "
                    + $"which reaches {(band.StrongShare < 1 ? $"{BoltPhrases.Share(band.StrongShare)} of " : "")}its proof load of {BoltPhrases.ProofLoad(band.Bolt)} at {BoltPhrases.Torque(band.Most, unit)} "
                    + $"({BoltPhrases.Factor(band.Factor.High, band.Factor)})",
                tightening.Place,
                band.StrongShare < 1 ? "tightened beyond what the shop allows" : "tightened beyond proof load")
            {
                Related = OfKind(tightening),
                Help = "compare torque, unit, thread and grade with the maker's data; usual tables aim at "
                    + $"{BoltPhrases.Torque(0.75 * band.Most / band.StrongShare, unit)}, three quarters of proof load",
            };
        }
        else if (tightening is { Band: null, Strength.Ceiling: { } ceiling } && ceiling.IsBeyond(torque))
        {
            yield return new Finding(
                Id,
                $"`{tightening.Name}` is tightened beyond what any bolt of its thread bears: {torque.Print()} on {tightening.Kind.Thread}, and even "
                    + $"{ceiling.Bolt.Grade.Words} reaches its proof load of {BoltPhrases.ProofLoad(ceiling.Bolt)} at {BoltPhrases.Torque(ceiling.Most, unit)} "
                    + $"({BoltPhrases.Factor(ceiling.Factor.High, ceiling.Factor)})",
                tightening.Place,
                "no bolt of this thread bears so much")
            {
                Related = OfKind(tightening),
                Help = "compare torque, unit and thread with the maker's data; a wrong unit is the usual slip (lbf·ft for lbf·in)",
            };
        }
    }

    /// <summary>The kind, where the torque is written elsewhere.</summary>
    internal static ImmutableArray<LabeledSpan> OfKind(Tightening tightening) =>
        tightening.Place == tightening.Kind.Declared ? [] : [new LabeledSpan(tightening.Kind.Declared, "thread, grade and coating are written here")];
}
