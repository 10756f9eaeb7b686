using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A joint is opened while its energy is live.</summary>
public sealed class CircuitLive : StripFailureRule<StillLive>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3004", "circuit-live", "A joint is opened while its energy is live", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint that the machine puts `on` an energy is opened, and no earlier step isolates that energy.",
        Why: "Electricity, pressure or a loaded spring hurts or kills whoever opens the joint. Isolate, wait and verify first, "
            + "as the manufacturer's data and the local rules for lockout say.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              part loom "loom"
              part lamp "work lamp" {
                wired by 1 plug_2 as lamp_plug { to loom  on mains }
              }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                unplug lamp_plug
                remove lamp
              }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              part loom "loom"
              part lamp "work lamp" {
                wired by 1 plug_2 as lamp_plug { to loom  on mains }
              }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                unplug lamp_plug
                remove lamp
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(StillLive failure, StripRun run)
    {
        var isolate = new NamedAction(Verb.Isolate, failure.Energy);
        var late = LateStep.Find(run, failure.Step, isolate);
        var found = StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Energy)} is live when {ItemPhrases.Doing(failure.Step.Verb, failure.Joint)}",
            $"{ItemPhrases.The(failure.Energy)} is still live",
            [new LabeledSpan(failure.Joint.Declared, $"on {ItemPhrases.The(failure.Energy)}")]);
        return late is null
            ? found with
            {
                Help = $"{ItemPhrases.Cue(isolate)} first",
                Fixes = [.. StepEdits.InsertBefore(run, failure.Step, [isolate])],
            }
            : found with
            {
                Related = [.. found.Related, new LabeledSpan(late.VerbSpan, "isolated only here")],
                Help = $"{ItemPhrases.Cue(isolate)} first, not only at {LinePhrases.Of(late.VerbSpan, failure.Step.VerbSpan, run.Library)}",
                Fixes = LateStep.CanComeForward(run, late, failure.Step, new StateVariable(StateKind.Live, failure.Energy.Index))
                    ? [.. StepMove.Before(run, late, failure.Step)]
                    : [],
            };
    }
}
