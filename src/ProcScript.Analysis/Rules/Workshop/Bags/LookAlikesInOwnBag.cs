using ProcScript.Analysis.Bags;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bags;

/// <summary>The author puts fasteners that fit, or start in, each other's holes into one bag.</summary>
public sealed class LookAlikesInOwnBag : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5022",
        "look-alikes-in-one-bag",
        "Fasteners that could be put to each other's holes share a bag",
        Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two actions name the same `bag`, and what they take off has the same thread and differs in length, grade, coating or head, or in oil "
            + "or thread locker; or their threads differ, and the one starts in the hole of the other: their diameters differ by no more than 0.54 of the "
            + "coarser pitch, as of M8x1.25 and M8x1, M12 and 1/2-13, so that about half of the thread's depth still catches. Only the hand may differ too.",
        Why: "Once they lie together, nothing but a rule and a sharp eye tells them apart, and each goes into the other's hole; of another "
            + "thread it jams there, or holds until it strips. Bags that are left to the compiler never hold look-alikes.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            fastener m8x40 "M8 × 40 bolt" { thread M8x1.25  length 40 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" {
                held by 4 m8x25 as guard_bolts
                held by 2 m8x40 as hinge_bolts
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts { bag "guard" }
                undo hinge_bolts { bag "guard" }
                remove guard
              }
            }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            fastener m8x40 "M8 × 40 bolt" { thread M8x1.25  length 40 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" {
                held by 4 m8x25 as guard_bolts
                held by 2 m8x40 as hinge_bolts
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts { bag "guard" }
                undo hinge_bolts { bag "hinge" }
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        var firsts = new List<(string Bag, Step Step)>();
        var told = new HashSet<(string Bag, string Sort)>();
        foreach (var action in outcome.Strip!.Actions)
        {
            if (action is { Target: Joint { Kind: var kind }, Origin: WrittenStep { Step: { Details.Bag: { } bag } step } }
                && LooseHardware.IsLoose(action, outcome.Strip)
                && HardwareSort.Hole(kind) is not null)
            {
                var first = firsts.Find(one => one.Bag == bag && HardwareSort.AreLookAlikes(KindOf(one.Step), kind)).Step;
                if (first is null)
                {
                    firsts.Add((bag, step));
                }
                else if (told.Add((bag, HardwareSort.Of(kind))))
                {
                    yield return At(bag, first, step);
                }
            }
        }
    }

    private static Kind KindOf(Step step) => ((Joint)step.Target!).Kind;

    private static Finding At(string bag, Step first, Step second) =>
        StepFinding.At(
            Id,
            second,
            $"{ItemPhrases.The(first.Target!)} and {ItemPhrases.The(second.Target!)} go into the bag \"{bag}\" and {HardwareSort.Fit(KindOf(first), KindOf(second))}: "
                + $"{HardwareSort.Words(Wordbook.English, KindOf(first), KindOf(second))} and {HardwareSort.Words(Wordbook.English, KindOf(second), KindOf(first))}",
            $"{KindOf(second).Title} goes in here",
            [new LabeledSpan(first.VerbSpan, $"{KindOf(first).Title} goes in here")]) with
        {
            Help = "give one of them a `bag` of its own, or leave out both names",
        };
}
