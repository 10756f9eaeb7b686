using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Reading;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Bolts;

/// <summary>Two places tell one joint two torques.</summary>
public sealed class TorqueGivenTwice : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC5012", "torque-given-twice", "One joint has two torques", Severity.Warning) { Fix = FixAvailability.Always };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An action gives a torque, and the joint that it tightens has one of its own that differs; or two actions of the procedure give "
            + "one joint different torques. That a joint or an action says otherwise than the kind is fine: the kind speaks for all, the "
            + "joint and the action for this place.",
        Why: "Both speak of the same bolts in the same place. One of them is out of date, and the next procedure on the machine takes the "
            + "other. If some of the bolts do want another torque, they are another joint. A torque in stages is one `torque 20, 40 N.m`.",
        Wrong: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener m10x30 "M10 × 30 bolt" { thread M10x1.5  grade 8.8  drive socket_16 }

            machine press "Press" {
              part guard "guard" { held by 2 m10x30 as guard_bolts { torque 44 N.m } }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts { refit { torque 40 N.m } }
                remove guard
              }
            }
            """,
        Right: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener m10x30 "M10 × 30 bolt" { thread M10x1.5  grade 8.8  drive socket_16 }

            machine press "Press" {
              part guard "guard" { held by 2 m10x30 as guard_bolts { torque 44 N.m } }
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
        if (outcome.Strip is not { } strip)
        {
            yield break;
        }

        var told = new Dictionary<Joint, (TighteningTorque Torque, SourceSpan Place)>();
        foreach (var action in outcome.Refit?.Actions ?? [])
        {
            if (action.Target is not Joint joint || StepOrigin.Details(action) is not { Torque: { } torque, TorqueDeclared: { } place })
            {
                continue;
            }

            if (joint is { TorqueDeclared: { } own, Torque: { } jointsOwn } && jointsOwn != torque)
            {
                yield return At(strip.Library, joint, place, torque, own, jointsOwn, "the joint says otherwise");
            }
            else if (told.TryGetValue(joint, out var before) && before.Torque != torque)
            {
                yield return At(strip.Library, joint, place, torque, before.Place, before.Torque, "another action says otherwise");
            }
            else
            {
                told.TryAdd(joint, (torque, place));
            }
        }
    }

    private static Finding At(
        SeenLibrary library, Joint joint, SourceSpan place, TighteningTorque torque, SourceSpan otherPlace, TighteningTorque other, string label) =>
        new(Id, $"`{joint.Name}` has two torques: {torque.Print()} and {other.Print()}", place, "for this action")
        {
            Related = [new LabeledSpan(otherPlace, label)],
            Help = "keep the one that the maker's data has; bolts that want another torque are another joint",
            Fixes =
            [
                new Fix(
                    "Write the same torque",
                    FixGrade.NeedsLook,
                    [new TextEdit(place, library.Around(otherPlace)!.Text.Slice(otherPlace.Span))]),
            ],
        };
}
