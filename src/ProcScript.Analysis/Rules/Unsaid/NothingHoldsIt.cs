using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>All that holds a part is thrown away, and the part goes back. Common practice, no source.</summary>
public sealed class NothingHoldsIt : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8009", "nothing-holds-it", "All that holds a part is discarded, and the part goes back", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint is discarded, the part that it holds goes back, and of the `held by` joints of that part none goes back.",
        Why: "The proof takes a discarded joint for one that nobody wants. Then the part lies loose. Where new ones go in, write `replace`; where "
            + "something else holds it, say so in the machine.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" { part guard "guard" { held by 4 pin as guard_pins } }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
              work { discard guard_pins because "They are brittle." }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" { part guard "guard" { held by 4 pin as guard_pins } }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
              work { replace guard_pins }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (outcome.Strip is not { } strip)
        {
            return [];
        }

        return
            from discard in strip.Discards
            where discard.Item is Joint { Role: JointRole.Held }
            let joint = (Joint)discard.Item
            from part in strip.Facts.Ends(joint)
            where !strip.Discarded.Contains(part)
                && strip.Actions.Any(action => action.Verb == Verb.Remove && action.Target == part)
                && strip.Facts.Ties(part).All(tie => tie.Role != JointRole.Held || strip.Discarded.Contains(tie))
            select StepFinding.At(
                Id,
                discard.Step,
                $"{ItemPhrases.The(joint)} is discarded, {ItemPhrases.The(part)} goes back, and nothing holds it then",
                "does not go back",
                new LabeledSpan(part.Declared, "goes back")) with
            {
                Help = $"write `replace {joint.Name}` where new ones go in; or discard the part as well",
            };
    }
}
