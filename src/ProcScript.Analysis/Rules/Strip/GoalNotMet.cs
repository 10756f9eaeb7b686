using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>No step does what the procedure is for.</summary>
public sealed class GoalNotMet : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3014", "goal-not-met", "No step does what the procedure is for", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The procedure has a `goal`, and no step does it: a `goal replace x` asks for `replace x`, a `goal remove x` for "
            + "`remove x` or `strip x`.",
        Why: "Somebody strips the machine, puts it back together, and the part it was all about has not been touched.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure new_guard "Replace the guard" on press {
              goal replace guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure new_guard "Replace the guard" on press {
              goal replace guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
              work {
                replace guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(StripRun run) =>
        from goal in run.MissedGoals
        let words = ItemPhrases.Written(new NamedAction(goal.Verb, goal.Target))
        select new Finding(Id, $"nothing in the procedure does {words}", goal.Source, "the goal is not met")
        {
            Help = ActionTable.Row(goal.Verb).Phase == ActionPhase.Work
                ? $"write {words} in the work"
                : $"write {words} in a stage",
            Fixes = [.. GoalEdits.Meet(run, goal)],
        };
}
