using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>Something that the machine asks for is not so.</summary>
public sealed class ConditionNotMet : StripFailureRule<ConditionFails>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3009", "condition-not-met", "Something that the machine asks for is not so", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The machine, or the step itself, says `needs …`, and at this step that is not so.",
        Why: "A `needs` is written where something falls, moves or does not come off otherwise: a door without its support, a "
            + "lever in the wrong position.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              control ram "ram lever" { up, down }
              part tool_head "tool head" {
                held by 2 pin as head_pins { needs ram at down }
              }
            }

            procedure head_off "Take the tool head off" on press {
              stage "Head" {
                release head_pins
                remove tool_head
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              control ram "ram lever" { up, down }
              part tool_head "tool head" {
                held by 2 pin as head_pins { needs ram at down }
              }
            }

            procedure head_off "Take the tool head off" on press {
              stage "Head" {
                set ram to down
                release head_pins
                remove tool_head
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(ConditionFails failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"{ItemPhrases.List(failure.Conditions.Select(NeedPhrases.IsNot))} when {ItemPhrases.Doing(failure.Step.Verb, failure.Target)}",
        $"needs {ItemPhrases.List(failure.Conditions.Select(NeedPhrases.Wanted))}",
        failure.Conditions.Where(need => need is AnyOf || need.Declared!.Each.Any(way => way.Item == need.Item) || failure.Conditions.Length == 1)
            .Select(need => NeedPhrases.Place(need, failure.Target))) with
    {
        Help = ItemPhrases.List(failure.Conditions.Select(need => Cure(need, failure.Step, run))),
        Fixes = failure.Conditions switch
        {
            [var only] => [.. Insert(only, failure.Step, run)],
            var several when several.All(need => Closing(need) is not null) =>
                [.. StepEdits.InsertBefore(run, failure.Step, several.Select(need => Closing(need)!.Value))],
            _ => [],
        },
    };

    private static IEnumerable<Fix> Insert(Need need, Step step, StripRun run) => need switch
    {
        AnyOf choice => choice.Quickest is { } way ? Insert(way, step, run) : [],
        ControlAt at when PoweredControl.IsolatedBefore(run, step, at.Control) is { } isolated =>
            PoweredControl.CanBeSet(run, at, isolated.Step, step) ? StepEdits.InsertBefore(run, isolated.Step, [Setting(at)], To(at)) : [],
        ControlAt at => StepEdits.InsertBefore(run, step, [Setting(at)], To(at)),
        PartPropped { IsPropped: true } => StepEdits.InsertBefore(run, step, [new NamedAction(Verb.Support, need.Item)]),
        EnergyIsolated or FluidEmpty or JointOff => StepEdits.InsertBefore(
            run, step, [ActionTable.OpeningOf(need.Item)]),
        PartAside => StepEdits.InsertBefore(run, step, [new NamedAction(Verb.Aside, need.Item)]),
        PartOut or PartOutOfTheWay => StepEdits.InsertBefore(run, step, [new NamedAction(Verb.Strip, need.Item)]),
        _ when Closing(need) is { } closing => StepEdits.InsertBefore(run, step, [closing]),
        _ => [],
    };

    private static string Cure(Need need, Step step, StripRun run) => need switch
    {
        AnyOf choice => ItemPhrases.Either(choice.Ways.Select(way => Cure(way, step, run))),
        ControlAt at when PoweredControl.IsolatedBefore(run, step, at.Control) is { } isolated =>
            $"{ItemPhrases.The(at.Control)} moves only while {ItemPhrases.The(isolated.Energy)} is live: write `set {at.Control.Name}{To(at)}` "
            + $"before that is isolated ({LinePhrases.Of(isolated.Step.VerbSpan, step.VerbSpan, run.Library)})",
        ControlAt at => $"write `set {at.Control.Name}{To(at)}` before",
        PartPropped { IsPropped: true } => $"write `support {need.Item.Name}` before",
        EnergyIsolated or FluidEmpty or JointOff or PartOut or PartOutOfTheWay => $"write {ItemPhrases.Written(ActionTable.OpeningOf(need.Item))} before",
        PartAside => $"write `aside {need.Item.Name}` before",
        _ when Closing(need) is { } closing => $"write {ItemPhrases.Written(closing)} before",
        _ => $"do this while {NeedPhrases.Is(need)}",
    };

    /// <summary>What brings a temporary part to where it is needed; null for anything else.</summary>
    private static NamedAction? Closing(Need need) => need switch
    {
        PartFitted { Part.IsTemporary: true } => new NamedAction(Verb.Fit, need.Item),
        JointComplete { Joint.IsTemporary: true } => new NamedAction(ActionTable.Closing(need.Item).Verb, need.Item),
        JointTight { Joint.IsTemporary: true } => new NamedAction(Verb.Tighten, need.Item),
        _ => null,
    };

    private static NamedAction Setting(ControlAt at) => new(Verb.Set, at.Control);

    private static string To(ControlAt at) => $" to {at.Control.Positions[at.Position]}";
}
