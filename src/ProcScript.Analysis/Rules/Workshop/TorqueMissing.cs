using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop;

/// <summary>A threaded fastener goes back, and nothing says how tight.</summary>
public sealed class TorqueMissing : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5001", "torque-missing", "A threaded fastener goes back without a torque", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A fastener with a thread or a grade is fastened or tightened in the refit, and neither its kind nor the joint nor the "
            + "action gives a torque.",
        Why: "Whoever tightens it has to guess. Too loose works itself free, too tight stretches the bolt or strips the thread, and the "
            + "card shows neither. Take the torque from the manufacturer's data.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener m8x25 "M8 × 25 flange bolt" { thread M8x1.25  grade 8.8  drive socket_13 }

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
            fastener m8x25 "M8 × 25 flange bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

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
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        var actions = outcome.Refit?.Actions ?? [];

        // What goes on slack is tightened by a step of its own.
        var later = actions.Where(action => action.Verb == Verb.Tighten).Select(action => action.Target).ToHashSet();
        return
            from action in actions
            where action.Verb == Verb.Tighten || (action.Verb == Verb.Fasten && !later.Contains(action.Target))
            let joint = action.Target as Joint
            where joint is { Torque: null, Kind: { Category: KindCategory.Fastener } kind } && (kind.Thread ?? kind.Grade) is not null
            where StepOrigin.Details(action).Torque is null
            group joint by joint into tightened
            select At(tightened.Key);
    }

    internal static Finding At(Joint joint) =>
        new(
            Id,
            $"`{joint.Name}` is tightened without a torque: {joint.Count} × {joint.Kind.Title}",
            joint.Declared,
            "goes back, and nothing says how tight")
        {
            Related = [new LabeledSpan(joint.Kind.Declared, "the kind gives none either")],
            Help = "write `torque` at the kind, at the joint, or in the `refit` block of the action that undoes it",
        };
}
