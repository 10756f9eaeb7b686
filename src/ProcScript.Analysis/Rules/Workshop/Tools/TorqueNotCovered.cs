using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Tools;

/// <summary>A torque that no torque wrench of the catalog covers.</summary>
public sealed class TorqueNotCovered : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5073",
        "torque-not-covered",
        "No torque wrench covers the torque",
        Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint is tightened to a torque that lies outside the `range` of every torque wrench that the procedure can see. Nothing is said "
            + "where the catalog has no wrench with a range, or where the step names a torque wrench of its own.",
        Why: "A torque that cannot be set is guessed. A wrench does not click below its scale and breaks above it, and the pack sends people to "
            + "a wrench that the shop does not have.",
        Wrong: """
            tool socket_8 "8 mm socket"
            tool wrench_25 "torque wrench, 5 to 25 N·m" { range 5 .. 25 N.m }
            fastener m5x12 "M5 × 12 bolt" { drive socket_8  torque 3 ± 0.5 N.m }

            machine press "Press" {
              part guard "guard" { held by 4 m5x12 as guard_bolts }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts
                remove guard
              }
            }
            """,
        Right: """
            tool socket_8 "8 mm socket"
            tool wrench_25 "torque wrench, 5 to 25 N·m" { range 5 .. 25 N.m }
            tool driver_5 "torque screwdriver, 1 to 5 N·m" { range 1 .. 5 N.m }
            fastener m5x12 "M5 × 12 bolt" { drive socket_8  torque 3 ± 0.5 N.m }

            machine press "Press" {
              part guard "guard" { held by 4 m5x12 as guard_bolts }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        var wrenches = outcome.Strip!.Library.Wrenches(outcome.Procedure);
        if (wrenches.All.IsEmpty)
        {
            return [];
        }

        return
            from action in outcome.Refit!.Actions
            where action.Verb is Verb.Fasten or Verb.Tighten or Verb.Connect or Verb.Engage or Verb.Plug
            let joint = (Joint)action.Target!
            let details = StepOrigin.Details(action)
            let torque = details.Torque ?? joint.Torque
            where torque is not null && !HasItsOwn(joint, details)
            let uncovered = wrenches.Uncovered(torque).ToImmutableArray()
            where !uncovered.IsEmpty
            let place = (details.Torque is null ? joint.TorqueDeclared : details.TorqueDeclared) ?? joint.Kind.Declared
            group (joint, uncovered) by place into same
            select At(same.Key, same.First().joint, same.First().uncovered, wrenches);
    }

    private static bool HasItsOwn(Joint joint, ActionDetails details) =>
        joint.Kind.Tools.Concat(joint.Tools).Concat(details.Tools).Any(ToolList.IsTorqueWrench) || (joint.Kind.Drive is { } drive && ToolList.IsTorqueWrench(drive));

    private static Finding At(SourceSpan place, Joint joint, ImmutableArray<Quantity> torques, TorqueWrenches wrenches) =>
        new(
            Id,
            $"no torque wrench covers {ItemPhrases.List(torques.Select(torque => torque.Print()))}, to which `{joint.Name}` is tightened",
            place,
            $"there {(wrenches.All.Length == 1 ? "is" : "are")} {ItemPhrases.List(wrenches.All.Select(tool => tool.Range!.Print()))}")
        {
            Related = [.. wrenches.All.Take(1).Select(tool => new LabeledSpan(tool.Declared, $"{tool.Title} stands here"))],
            Help = "put the wrench that the shop has for it into the catalog, with its `range`, or check the figure",
        };
}
