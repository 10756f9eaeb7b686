using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A hand goes to a joint whose energy is isolated and not yet proved to be off.</summary>
public sealed class NotProvedDead : StripFailureRule<NotProved>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3020", "not-proved-dead", "A joint is worked on before its energy is proved to be off", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy says where it is proved to be off (`verify \"…\" at posts`). Nobody could get there when it was isolated, and no "
            + "`verify` step has proved it before a joint on it is touched.",
        Why: "The wrong breaker, a second feed, a switch that sticks: until somebody has measured where the work is, the circuit counts as "
            + "live. Take off what hides the place, prove it there, and only then touch anything on the circuit.",
        Wrong: """
            tool tester "two-pole voltage tester"
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" {
                isolate "Switch off at the isolator. Lock it."
                verify  "Measure each phase against each other and against earth." with tester at lamp_plug expect <= 5 V
                restore "Unlock and switch on."
              }
              part lid "lid" { held by 4 pin as lid_pins }
              part loom "loom"
              part lamp "work lamp" { behind lid  wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                release lid_pins
                remove lid
                unplug lamp_plug
                remove lamp
              }
            }
            """,
        Right: """
            tool tester "two-pole voltage tester"
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" {
                isolate "Switch off at the isolator. Lock it."
                verify  "Measure each phase against each other and against earth." with tester at lamp_plug expect <= 5 V
                restore "Unlock and switch on."
              }
              part lid "lid" { held by 4 pin as lid_pins }
              part loom "loom"
              part lamp "work lamp" { behind lid  wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                release lid_pins
                remove lid
                verify mains
                unplug lamp_plug
                remove lamp
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(NotProved failure, StripRun run)
    {
        var verify = new NamedAction(Verb.Verify, failure.Energy);
        return StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Energy)} is isolated and not proved to be off when {ItemPhrases.Doing(failure.Step.Verb, failure.Target)}",
            $"nobody has proved yet that {ItemPhrases.The(failure.Energy)} is off",
            [
                .. failure.Isolated is { } isolated ? [new LabeledSpan(isolated.VerbSpan, $"isolated here, where nobody can prove it: {ItemPhrases.List(failure.LackedThen.Select(NeedPhrases.IsNot))}")] : Array.Empty<LabeledSpan>(),
                new LabeledSpan(failure.Energy.VerifyAt!.Declared, "says where it is proved"),
            ]) with
        {
            Help = failure.LackingNow.IsEmpty
                ? $"write `verify {failure.Energy.Name}` here, before anything on it is touched"
                : $"prove it while {ItemPhrases.List(failure.LackingNow.Select(NeedPhrases.Is))}, or say another place of the proof",
            Fixes = failure.LackingNow.IsEmpty ? [.. StepEdits.InsertBefore(run, failure.Step, [verify])] : [],
        };
    }
}
