using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>An energy has been isolated that is still needed.</summary>
public sealed class IsolatedWhileNeeded : StripFailureRule<IsolatedBefore>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3018", "isolated-while-needed", "An energy has been isolated that is still needed", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step needs an energy live, and an earlier step has isolated it.",
        Why: "Nothing moves without power: the lever stays where it is, and somebody switches the supply on again with covers "
            + "off.",
        Wrong: """
            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator and lock it."  restore "Unlock and switch on." }
              control ram "ram lever" {
                up, down
                needs mains live
              }
            }

            procedure lower_ram "Lower the ram" on press {
              stage "Ram" {
                isolate mains
                set ram to down
              }
            }
            """,
        Right: """
            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator and lock it."  restore "Unlock and switch on." }
              control ram "ram lever" {
                up, down
                needs mains live
              }
            }

            procedure lower_ram "Lower the ram" on press {
              stage "Ram" {
                set ram to down
                isolate mains
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(IsolatedBefore failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"{ItemPhrases.The(failure.Need.Energy)} has been isolated when {ItemPhrases.Doing(failure.Step.Verb, failure.Target)}",
        $"needs {NeedPhrases.Wanted(failure.Need)}",
        [
            new LabeledSpan(failure.Isolated.VerbSpan, "isolated here"),
            new LabeledSpan(failure.Need.Declared!.Declared, $"needs {NeedPhrases.Wanted(failure.Need)}"),
        ]) with
    {
        Help = $"do this before {ItemPhrases.The(failure.Need.Energy)} is isolated",
    };
}
