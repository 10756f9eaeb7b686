using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bags;

/// <summary>Two steps of one direction read the same on the cards and are about different items.</summary>
public sealed class StepsReadTheSame : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5023", "steps-read-the-same", "Steps that are about different items read the same", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two steps of the strip, of the work or of the refit have the same words and the same place on the cards, and are about different "
            + "joints, parts, energies, fluids or controls. The words of a joint are its count and its kind; its place is the part it belongs "
            + "to, its `at`, and the part after `to` where that tells it from another.",
        Why: "Whoever holds the card cannot see which of the two is meant. So the wrong plug is opened, the front bolts go into the rear holes, or "
            + "one of the two is ticked twice and the other is forgotten.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" {
                held by 2 m8 as front_bolts
                held by 2 m8 as rear_bolts
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo front_bolts
                undo rear_bolts
                remove guard
              }
            }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" {
                held by 2 m8 as front_bolts { at "front edge" }
                held by 2 m8 as rear_bolts  { at "rear edge" }
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo front_bolts
                undo rear_bolts
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        // To word all steps is slow, and most jobs have no two things of one name.
        if (!AnyNamedAlike(outcome.Strip!.Actions.Concat(outcome.Refit!.Actions)))
        {
            yield break;
        }

        var places = StepPlaces.Of(StepList.Of(outcome.Strip!, outcome.Refit!).Steps);
        var told = new HashSet<MachineItem>();
        foreach (var alike in places.ReadingTheSame())
        {
            // Each once, for the way back reads the same as well; in the order of the machine, so that every job says the same of two.
            var items = alike.Select(step => step.Target!).Distinct().OrderBy(item => item.Index).ToList();
            foreach (var item in items.Skip(1).Where(told.Add))
            {
                yield return At(items[0], item, Reading(alike[0], places));
            }
        }
    }

    /// <summary>Whether two things are worked on that a step could call by the same words, whatever is done to them.</summary>
    private static bool AnyNamedAlike(IEnumerable<PerformedAction> actions)
    {
        var items = new HashSet<MachineItem>();
        var names = new HashSet<(string Title, string Place)>();
        foreach (var action in actions)
        {
            if (action.Target is { } item && items.Add(item) && !names.Add(item is Joint joint ? (joint.Kind.Title, ItemWords.Place(joint)) : (item.Title, "")))
            {
                return true;
            }
        }

        return false;
    }

    private static string Reading(PlannedStep step, StepPlaces places) =>
        places.Of(step) is { Length: > 0 } place ? $"{StepText.Of(step)} ({place})" : StepText.Of(step);

    private static Finding At(MachineItem first, MachineItem other, string reading) =>
        new(Id, $"`{first.Name}` and `{other.Name}` read the same on the cards: \"{reading}\"", other.Declared, "no card can tell this one apart")
        {
            Related = first.Declared == other.Declared ? [] : [new LabeledSpan(first.Declared, "from this one")],
            Help = other is Joint
                ? "say where each of them is with `at \"…\"`, or give their parts titles of their own"
                : "give each of them a title of its own",
        };
}
