using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>A refit rule names an action that the refit has not.</summary>
public sealed class RuleNamesNoAction : RefitFailureRule<RuleWithoutAction>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4002", "rule-names-no-action", "A refit rule names an action that the refit has not", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A line of the `refit` block orders an action that never happens: nothing of the kind came off, or it is "
            + "discarded, or the verb is not for it.",
        Why: "The rule was written for something that matters. Since it binds nothing, the refit goes in whatever order it "
            + "likes.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part lamp "work lamp"
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
              refit {
                engage guard_pins before fit lamp
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part lamp "work lamp"
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                remove lamp
                release guard_pins
                remove guard
              }
              refit {
                engage guard_pins before fit lamp
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(RuleWithoutAction failure, RefitAttempt attempt)
    {
        var (anchor, target) = (failure.Anchor, failure.Anchor.Target);
        var written = ItemPhrases.Written(anchor);
        return new Finding(
            Id,
            $"the refit has no {written}",
            anchor.Source,
            failure.Why switch
            {
                NoAction.WrongVerb => $"`{ActionTable.Row(anchor.Verb).Word}` is not for {ItemPhrases.The(target)}",
                NoAction.Discarded => $"{ItemPhrases.The(target)} is discarded",
                NoAction.NotSnug => $"{ItemPhrases.The(target)} goes in with its torque at once",
                _ => $"the strip has nothing that {written} would undo",
            })
        {
            Related = [new LabeledSpan(target.Declared, "declared here")],
            Help = failure.Why switch
            {
                NoAction.WrongVerb when anchor.Verb is Verb.Snug or Verb.Retorque => "only fasteners have a torque: take the rule out",
                NoAction.WrongVerb => $"write {ItemPhrases.Written(new NamedAction(ActionTable.Closing(target).Verb, target))}",
                NoAction.NotSnug => $"write `snug {target.Name}` as a rule of its own: it goes in finger-tight then, and gets its torque later",
                _ => "take the rule out, or name an action that the refit has",
            },
        };
    }
}
