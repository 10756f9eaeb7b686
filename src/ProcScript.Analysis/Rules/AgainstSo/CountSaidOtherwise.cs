using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Saying;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.AgainstSo;

/// <summary>Words give one number of pieces and the count gives another. Common practice, no source.</summary>
public sealed class CountSaidOtherwise : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8105", "count-said-otherwise", "Words give another number than the count", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The `at` of a joint, or the `how` of a step on one, has a number in words, as in *the front four* or *two front, two rear*, and neither one "
            + "of them nor their sum is the number of pieces. Where a sentence speaks of an order or a share (*first*, *rest*, *each*), only "
            + "more than there are is told.",
        Why: "One of the two is wrong: a bolt is left in, or somebody looks for one that is not there.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" { part guard "guard" { held by 5 pin as guard_pins { at "two front and two rear" } } }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" { part guard "guard" { held by 5 pin as guard_pins { at "two front and three rear" } } }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var told = new HashSet<Joint>();
        foreach (var action in (outcome.Strip?.Actions ?? []).Concat(outcome.Refit?.Actions ?? []))
        {
            if (action is not { Target: Joint joint, Count: > 0 })
            {
                continue;
            }

            if (joint.At is { } at && told.Add(joint) && Wrong(at, joint.Count) is { } place)
            {
                yield return At(place, joint.Count, joint.Declared, joint);
            }

            foreach (var how in StepOrigin.Details(action).How)
            {
                if (Wrong(how, action.Count) is { } sentence)
                {
                    yield return At(sentence, action.Count, StepOrigin.Source(action), joint);
                }
            }
        }
    }

    /// <summary>The first sentence of a text that gives another number; null where none does.</summary>
    private static string? Wrong(string text, int count) => SpokenCounts.AnyIn(text)
        ? SentenceSplitter.Split(text).Where(sentence => SpokenCounts.IsAgainst(sentence, count)).Select(sentence => sentence.ToString()).FirstOrDefault()
        : null;

    private static Finding At(string sentence, int count, SourceSpan place, Joint joint) =>
        new(Id, $"\"{sentence}\": of `{joint.Name}` it is {count}", place, "which of the two?")
        {
            Related = place == joint.Declared ? [] : [new LabeledSpan(joint.Declared, "declared here")],
            Help = "put the words or the count right",
        };
}
