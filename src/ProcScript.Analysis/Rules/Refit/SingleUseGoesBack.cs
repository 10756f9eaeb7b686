using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>A part that serves once goes back.</summary>
public sealed class SingleUseGoesBack : RefitFailureRule<SingleUseReturns>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4005", "single-use-goes-back", "A part that serves once goes back", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part that the machine marks `single use` comes out, and the procedure neither replaces nor discards it.",
        Why: "A crushed seal, a stretched bolt or a torn gasket does not hold a second time.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part seal "guard lining" {
                single use
                behind guard
              }
            }

            procedure seal_out "Take the guard lining out" on press {
              stage "Guard" {
                release guard_pins
                remove guard
                remove seal
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part seal "guard lining" {
                single use
                behind guard
              }
            }

            procedure seal_out "Take the guard lining out" on press {
              stage "Guard" {
                release guard_pins
                remove guard
                remove seal
              }
              work {
                replace seal
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(SingleUseReturns failure, RefitAttempt attempt) =>
        StepFinding.At(
            Id,
            RefitFinding.Step(failure.Removal)!,
            $"{ItemPhrases.The(failure.Part)} serves once and goes back",
            "it comes out here and is not replaced",
            [new LabeledSpan(failure.Part.Declared, "declared `single use`")]) with
        {
            Help = $"write `replace {failure.Part.Name}` in the work, or `discard {failure.Part.Name} because \"…\"`",
        };
}
