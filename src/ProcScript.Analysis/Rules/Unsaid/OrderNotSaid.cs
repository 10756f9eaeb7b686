using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A joint of many bolts of which nobody has said in what order they are tightened. Common practice, no source.</summary>
public sealed class OrderNotSaid : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8008", "order-not-said", "Many bolts in one joint, and no order of tightening", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint of eight or more fasteners with a torque (`limits.patternFrom`) has no `pattern`, nor has its kind.",
        Why: "Tightened round and round, a flange bends and leaks. Where the order does not matter, write `pattern none`.",
        Wrong: """
            tool socket_10 "10 mm socket"
            fastener m6 "M6 × 20 bolt" { thread M6x1  length 20 mm  grade 8.8  drive socket_10  torque 9.5 ± 1 N.m }

            machine press "Press" { part cover "cover" { held by 8 m6 as cover_bolts } }
            """,
        Right: """
            tool socket_10 "10 mm socket"
            fastener m6 "M6 × 20 bolt" { thread M6x1  length 20 mm  grade 8.8  drive socket_10  torque 9.5 ± 1 N.m }

            machine press "Press" { part cover "cover" { held by 8 m6 as cover_bolts { pattern star } } }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from joint in facts.Machine.Joints
        where joint is { Role: JointRole.Held, Kind.Category: KindCategory.Fastener, Torque: not null, Pattern: null }
            && joint.Count >= facts.Settings.Get(SettingsTable.PatternFrom)
        select new Finding(
            Id,
            $"nothing says in what order `{joint.Name}` is tightened: {ItemPhrases.Pieces(joint, joint.Count)}",
            joint.Declared,
            "has no `pattern`")
        {
            Help = "write `pattern star`, `inside out` or `listed`, or `pattern none` where the order does not matter",
        };
}
