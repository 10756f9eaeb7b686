using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>An energy is isolated where nobody can prove that it is off, and no later step does.</summary>
public sealed class ProofOutOfReach : StripFailureRule<NeverProved>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3021", "proof-out-of-reach", "An energy is proved to be off where nobody can get", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy says where it is proved to be off (`verify \"…\" at posts`). When it is isolated that place is hidden, and no "
            + "`verify` step follows once it is open.",
        Why: "A card that asks for a reading under a closed lid is ticked without one.",
        Wrong: """
            tool tester "two-pole voltage tester"
            clip pin "push pin"

            machine press "Press" {
              energy mains "mains supply" {
                isolate "Switch off at the isolator. Lock it."
                verify  "Measure each phase against each other and against earth." with tester at "the terminal block" expect <= 5 V { behind lid }
                restore "Unlock and switch on."
              }
              part lid "lid" { held by 4 pin as lid_pins }
              part filter "filter" { behind lid  needs mains isolated }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                isolate mains
                release lid_pins
                remove lid
                remove filter
              }
            }
            """,
        Right: """
            tool tester "two-pole voltage tester"
            clip pin "push pin"

            machine press "Press" {
              energy mains "mains supply" {
                isolate "Switch off at the isolator. Lock it."
                verify  "Measure each phase against each other and against earth." with tester at "the terminal block" expect <= 5 V { behind lid }
                restore "Unlock and switch on."
              }
              part lid "lid" { held by 4 pin as lid_pins }
              part filter "filter" { behind lid  needs mains isolated }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                isolate mains
                release lid_pins
                remove lid
                verify mains
                remove filter
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(NeverProved failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"nobody can prove here that {ItemPhrases.The(failure.Energy)} is off: {ItemPhrases.List(failure.Lacking.Select(NeedPhrases.IsNot))}",
        "no later step proves it",
        [new LabeledSpan(failure.Energy.VerifyAt!.Declared, "says where it is proved")]) with
    {
        Help = $"write `verify {failure.Energy.Name}` once the place can be got at, or isolate it after that",
    };
}
