using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A joint of a temporary part is closed before what it ties is there.</summary>
public sealed class ClosedBeforeItsPart : StripFailureRule<ClosedTooEarly>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3022", "closed-too-early", "A joint of a temporary part is closed before its ends are there", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A stage fastens a temporary part that it has not fitted yet, or fastens it to a part that is out.",
        Why: "The bolts of a lifting eye hold nothing while the eye lies on the bench, and the card asks for what cannot be done.",
        Wrong: """
            fastener eye_bolt "M10 eye bolt" { tool bar }
            tool bar "bar"

            machine press "Press" {
              part ram "ram" {
                mass 60 kg  hoist
                part eye "lifting eye" { temporary  held by 1 eye_bolt as eye_bolts }
              }
            }

            procedure ram_off "Take the ram off" on press {
              stage "Ram" {
                fasten eye_bolts
                fit eye
                remove ram { needs eye fitted }
              }
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

            procedure ram_off "Take the ram off" on press {
              stage "Ram" {
                fit eye
                fasten eye_bolts
                remove ram { needs eye fitted }
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(ClosedTooEarly failure, StripRun run)
    {
        var missing = failure.Lacking.OfType<PartInPlace>().Select(need => need.Part).ToImmutableArray();
        return StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Joint)} cannot be closed yet",
            ItemPhrases.List(failure.Lacking.Select(NeedPhrases.IsNot)),
            [new LabeledSpan(failure.Joint.Declared, "declared here")]) with
        {
            Help = missing is [{ IsTemporary: true } part] ? $"write `fit {part.Name}` before" : "do this while its ends are together",
            Fixes = missing is [{ IsTemporary: true } only] ? [.. StepEdits.InsertBefore(run, failure.Step, [new NamedAction(Verb.Fit, only)])] : [],
        };
    }
}
