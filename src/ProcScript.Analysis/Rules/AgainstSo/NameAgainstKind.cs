using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Saying;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.AgainstSo;

/// <summary>A joint is called by what it is not made of. Common practice, no source.</summary>
public sealed class NameAgainstKind : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8106", "name-against-kind", "A joint is called by what it is not made of", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The name of a `held by` joint ends in *bolts*, *screws*, *nuts*, *clips* or *ties*, and its kind is of another sort: a clip that is called a bolt, a "
            + "fastener that is called a clip, a nut that is called a screw. Bolts and screws are one here.",
        Why: "Either the name or the kind is a slip, and with the kind go tool, torque and what lies in the bag.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" { part guard "guard" { held by 2 m8 as guard_nuts } }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" { part guard "guard" { held by 2 m8 as guard_bolts } }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from joint in facts.Machine.Joints
        where joint.Role == JointRole.Held
        let called = TradeNouns.Noun().Match(joint.Name)
        where called.Success && IsAgainst(called.Groups["noun"].Value, joint.Kind)
        select new Finding(Id, $"`{joint.Name}` is made of {ItemPhrases.Pieces(joint, joint.Count)}", joint.Declared, $"called `{called.Groups["noun"].Value}`")
        {
            Related = [new LabeledSpan(joint.Kind.Declared, "made of this")],
            Help = "give the joint the name of what it is, or the kind that it is meant to be of",
        };

    private static bool IsAgainst(string noun, Kind kind) => noun switch
    {
        "clip" => kind.Category == KindCategory.Fastener,
        "tie" => kind.Category == KindCategory.Fastener || TradeNouns.Turned().IsMatch(kind.Title),
        "nut" => kind.Category is KindCategory.Clip or KindCategory.Bond || (TradeNouns.Turned().IsMatch(kind.Title) && !TradeNouns.Nut().IsMatch(kind.Title)),
        _ => kind.Category is KindCategory.Clip or KindCategory.Bond || (TradeNouns.Nut().IsMatch(kind.Title) && !TradeNouns.Turned().IsMatch(kind.Title)),
    };
}
