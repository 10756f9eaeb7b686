using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A part without a way aside is moved aside.</summary>
public sealed class CannotGoAside : StripFailureRule<NoWayAside>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3011", "cannot-go-aside", "A part without a way aside is moved aside", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step moves a part aside, and the machine does not say how that part goes aside.",
        Why: "A part that hangs by its wires or stands on its edge gets damaged. Only who knows the machine can say that it "
            + "may be moved so, and how.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Look behind the guard" on press {
              stage "Guard" {
                release guard_pins
                aside guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" {
                held by 4 pin as guard_pins
                aside "Swing the guard up." needs guard_pins
              }
              part filter "filter" { behind guard }
            }

            procedure guard_off "Look behind the guard" on press {
              stage "Guard" {
                release guard_pins
                aside guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(NoWayAside failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"{ItemPhrases.The(failure.Part)} has no way aside",
        "the machine does not say how",
        [new LabeledSpan(failure.Part.Declared, "declared here without `aside`")]) with
    {
        Help = $"remove {ItemPhrases.The(failure.Part)}, or write `aside \"…\"` at the part in the machine",
    };
}
