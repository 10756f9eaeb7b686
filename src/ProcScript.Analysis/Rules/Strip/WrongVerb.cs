using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>The verb is not for things of this sort.</summary>
public sealed class WrongVerb : StripFailureRule<VerbDoesNotFit>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3007", "wrong-verb", "The verb is not for things of this sort", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Each sort of thing has its own verbs: fasteners are undone or loosened, clips and covers released, connectors "
            + "unplugged, lines disconnected, bonds cut, parts moved aside or removed.",
        Why: "The verb tells the technician which hand movement and which tool to expect. `unplug` on a bolt is either the "
            + "wrong word or the wrong name.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_pins
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(VerbDoesNotFit failure, StripRun run)
    {
        var fitting = ActionTable.Opening(failure.Target);
        var isStrip = ActionTable.Row(failure.Step.Verb).Phase.HasFlag(ActionPhase.Strip);
        return StepFinding.At(
            Id,
            failure.Step,
            $"`{ActionTable.Row(failure.Step.Verb).Word}` is not for {ItemPhrases.The(failure.Target)}",
            Sort(failure.Target),
            [new LabeledSpan(failure.Target.Declared, "declared here")]) with
        {
            Help = isStrip ? $"write {ItemPhrases.Written(ActionTable.OpeningOf(failure.Target))}" : "name a part or a joint",
            Fixes = isStrip && fitting.Verb != Verb.Set ? [StepEdits.ReplaceVerb(failure.Step.VerbSpan, fitting.Verb)] : [],
        };
    }

    private static string Sort(MachineItem item) => item switch
    {
        Joint { IsLock: true } pin => $"{ItemPhrases.Pieces(pin, pin.Count)} is a lock: a {pin.Kind.Category.ToString().ToLowerInvariant()}",
        Joint { Role: JointRole.Cover } cover => $"{ItemPhrases.Pieces(cover, cover.Count)} is a cover",
        Joint joint => $"{ItemPhrases.Pieces(joint, joint.Count)} is a {joint.Kind.Category.ToString().ToLowerInvariant()}",
        Part part => $"{ItemPhrases.The(part)} is a part",
        Energy energy => $"{ItemPhrases.The(energy)} is an energy",
        Fluid fluid => $"{ItemPhrases.The(fluid)} is a fluid",
        _ => $"{ItemPhrases.The(item)} is a control",
    };
}
