using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>A step of the refit cannot be performed.</summary>
public sealed class RefitStepBlocked : RefitRunRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4007", "refit-step-blocked", "Actions of the refit wait for each other", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The refit comes to a step that cannot be performed: what it needs comes only after it. No rule of the author is "
            + "to blame; the machine's own `refit needs` are.",
        Why: "The strip goes well, and the machine cannot be put back: the worst moment to find out.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" {
                held by 4 pin as guard_pins
                refit needs lid fitted
              }
              part lid "lid" {
                held by 2 pin as lid_pins
                refit needs guard fitted
              }
            }

            procedure both_off "Take guard and lid off" on press {
              stage "Both" {
                release guard_pins
                remove guard
                release lid_pins
                remove lid
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" {
                held by 4 pin as guard_pins
                strip needs lid fitted
              }
              part lid "lid" {
                held by 2 pin as lid_pins
                refit needs guard fitted
              }
            }

            procedure both_off "Take guard and lid off" on press {
              stage "Both" {
                release guard_pins
                remove guard
                release lid_pins
                remove lid
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(RefitAttempt attempt)
    {
        foreach (var circle in attempt.Failures.OfType<NeedCircle>())
        {
            var (first, second) = (circle.Edges[0].Later, circle.Edges[0].Earlier);
            yield return RefitFinding.At(
                Id,
                first,
                $"{ItemPhrases.Written(first)} and {ItemPhrases.Written(second)} wait for each other in the refit",
                "its inverse cannot be performed",
                [.. RefitFinding.Chain(circle.Edges)]) with
            {
                Help = circle.IsAboutTest ? RefitFinding.TestHelp : "let one of the conditions bind the strip only",
            };
        }

        foreach (var blocked in attempt.Failures.OfType<Blocked>())
        {
            yield return RefitFinding.At(
                Id,
                blocked.Step,
                $"the refit stops at {ItemPhrases.Written(blocked.Step)}: {NeedPhrases.IsNot(blocked.Need)}",
                "its inverse cannot be performed",
                new LabeledSpan(blocked.Need.Declared?.Declared ?? blocked.Need.Item.Declared, $"needs {NeedPhrases.Wanted(blocked.Need)}"));
        }
    }
}
