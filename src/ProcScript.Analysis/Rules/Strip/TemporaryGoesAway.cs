using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A part is replaced or discarded with something temporary on it.</summary>
public sealed class TemporaryGoesAway : StripFailureRule<TemporaryGoesAlong>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3023", "temporary-goes-along", "A part is replaced or discarded with something temporary on it", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part is replaced or discarded while a temporary part, such as a lifting eye, is still fitted to it.",
        Why: "The eye goes away with the old part, and nobody has moved it to the new one, which then hangs on nothing.",
        Wrong: """
            fastener eye_bolt "M10 eye bolt" { tool bar }
            tool bar "bar"

            machine press "Press" {
              part ram "ram" {
                mass 60 kg  hoist
                part eye "lifting eye" { temporary  held by 1 eye_bolt as eye_bolts }
              }
            }

            procedure ram_new "Replace the ram" on press {
              goal replace ram
              stage "Ram" {
                fit eye
                fasten eye_bolts
                remove ram { needs eye fitted }
              }
              work { replace ram }
            }
            """,
        Right: """
            fastener eye_bolt "M10 eye bolt" { tool bar }
            tool bar "bar"

            machine press "Press" {
              part ram "ram" {
                mass 60 kg  hoist
                part eye "lifting eye" { temporary  held by 1 eye_bolt as eye_bolts }
              }
            }

            procedure ram_new "Replace the ram" on press {
              goal replace ram
              stage "Ram" {
                fit eye
                fasten eye_bolts
                remove ram { needs eye fitted }
                undo eye_bolts
                remove eye
              }
              work { replace ram }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(TemporaryGoesAlong failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"{ItemPhrases.List(failure.Temporary.Select(ItemPhrases.The))} {(failure.Temporary.Length == 1 ? "is" : "are")} still on {ItemPhrases.The(failure.Part)}",
        "what is temporary would go away with it",
        failure.Temporary.Select(part => new LabeledSpan(part.Declared, "declared here"))) with
    {
        Help = "take it off first; the refit puts it on the new part for you",
        Fixes = failure.Temporary is [var only] ? [.. StepEdits.InsertBefore(run, failure.Step, [new NamedAction(Verb.Strip, only)])] : [],
    };
}
