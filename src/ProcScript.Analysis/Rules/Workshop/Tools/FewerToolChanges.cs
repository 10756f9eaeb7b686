using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Tools;

/// <summary>Another order of the steps of a stage changes tools less often.</summary>
public sealed class FewerToolChanges : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5071",
        "fewer-tool-changes",
        "Another order of a stage changes tools less often",
        Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Steps of one stage that take joints and parts off could stand in another order, in which tools are laid down and taken up less "
            + "often. The order was tried: strip and refit are proven with it, and the whole job takes fewer changes. Power, fluids, "
            + "supports, controls, work and checks stay where they are, and a part stays with the step that frees it.",
        Why: "Each change is a reach to the trolley, and a chance to leave a tool in the machine. The order of the author may have a reason that "
            + "the machine does not state; then keep it, and say the reason with `// proc: allow`.",
        Wrong: """
            tool socket_10 "10 mm socket"
            tool socket_13 "13 mm socket"
            fastener m6x20 "M6 × 20 bolt" { drive socket_10 }
            fastener m8x25 "M8 × 25 bolt" { drive socket_13 }

            machine press "Press" {
              part guard "guard" { held by 4 m6x20 as guard_bolts  held by 2 m8x25 as guard_studs }
              part shelf "shelf" { held by 4 m6x20 as shelf_bolts  held by 2 m8x25 as shelf_studs }
            }

            procedure both_off "Take guard and shelf off" on press {
              stage "Guard and shelf" {
                undo guard_bolts
                undo guard_studs
                remove guard
                undo shelf_bolts
                undo shelf_studs
                remove shelf
              }
            }
            """,
        Right: """
            tool socket_10 "10 mm socket"
            tool socket_13 "13 mm socket"
            fastener m6x20 "M6 × 20 bolt" { drive socket_10 }
            fastener m8x25 "M8 × 25 bolt" { drive socket_13 }

            machine press "Press" {
              part guard "guard" { held by 4 m6x20 as guard_bolts  held by 2 m8x25 as guard_studs }
              part shelf "shelf" { held by 4 m6x20 as shelf_bolts  held by 2 m8x25 as shelf_studs }
            }

            procedure both_off "Take guard and shelf off" on press {
              stage "Guard and shelf" {
                undo guard_bolts
                undo shelf_bolts
                undo guard_studs
                remove guard
                undo shelf_studs
                remove shelf
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        var strip = outcome.Strip!;
        var changes = new ToolChanges(null);
        foreach (var stage in strip.Stages)
        {
            var (before, inHand) = (changes.Count, changes.InHand);
            ImmutableArray<ImmutableArray<string>> tools = [.. stage.Actions.Select(ToolList.Of)];
            foreach (var taken in tools)
            {
                changes.Take(taken);
            }

            var now = changes.Count - before;
            if (now > ToolChanges.Fewest(tools, inHand)
                && StageOrder.Find(strip, stage, tools, inHand) is { } order
                && new StageTrial(new ToolList(strip.Library.Wrenches(outcome.Procedure)))
                    .Saved(strip, outcome.Refit!, stage.Stage, order) is { Strip: > 0 and var saved, All: > 0 })
            {
                yield return At(stage.Stage, order, now, now - saved);
            }
        }
    }

    private static Finding At(Stage stage, ImmutableArray<Step> order, int now, int then)
    {
        var first = Enumerable.Range(0, order.Length).First(i => order[i] != stage.Steps[i]);
        var last = Enumerable.Range(0, order.Length).Last(i => order[i] != stage.Steps[i]);
        var steps = order[first..(last + 1)].Select(step => ItemPhrases.Written(new NamedAction(step.Verb, step.Target)));
        return new Finding(
            Id,
            $"the stage \"{stage.Title}\" takes {now} tool changes, and {then} in another order",
            new SourceSpan(stage.Source.Path, new TextSpan(stage.Source.Span.Start, "stage".Length)),
            "its steps depend on each other less than their order does")
        {
            Help = $"in this order it takes {then}: {string.Join(", ", steps)}",
        };
    }
}
