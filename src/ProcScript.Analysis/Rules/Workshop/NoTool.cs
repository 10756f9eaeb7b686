using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop;

/// <summary>A fastener comes off, and nothing says with what.</summary>
public sealed class NoTool : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5002", "no-tool", "A fastener comes off without a tool", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A fastener is undone or loosened, its kind has neither `drive` nor `tool`, and neither the joint nor the action names a tool.",
        Why: "The tool list is what people carry to the machine. What is not on it is fetched later, or replaced by whatever lies near.",
        Wrong: """
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  grade 8.8  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" { held by 4 m8x25 as guard_bolts }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts
                remove guard
              }
            }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" { held by 4 m8x25 as guard_bolts }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome) =>
        from action in outcome.Strip?.Actions ?? []
        where action.Verb is Verb.Undo or Verb.Loosen
        let joint = action.Target as Joint
        where joint is { Tools.IsEmpty: true, Kind: { Category: KindCategory.Fastener, Drive: null, Tools.IsEmpty: true } }
        where StepOrigin.Details(action).Tools.IsEmpty
        group joint by joint into undone
        select At(undone.Key);

    internal static Finding At(Joint joint) =>
        new(
            Id,
            $"`{joint.Name}` comes off without a tool: {joint.Count} × {joint.Kind.Title}",
            joint.Declared,
            "comes off, and nothing says with what")
        {
            Related = [new LabeledSpan(joint.Kind.Declared, "the kind names neither a `drive` nor a `tool`")],
            Help = "write `drive` or `tool` at the kind, or `tool` at the joint or the action",
        };
}
