using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>Somebody works on something that lies behind a part that is still there.</summary>
public sealed class OutOfReach : StripFailureRule<InTheWay>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3002", "out-of-reach", "Something is worked on while a part is in the way", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step works on something that lies behind a part, and that part is neither out nor aside.",
        Why: "Nobody can get a hand or a tool there. On the job the technician finds out with the machine half apart, and "
            + "forces it.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" {
                behind guard
                held by 2 pin as filter_pins
              }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                release filter_pins
                remove filter
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" {
                behind guard
                held by 2 pin as filter_pins
              }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                release guard_pins
                remove guard
                release filter_pins
                remove filter
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(InTheWay failure, StripRun run)
    {
        var parts = failure.Parts.Select(need => need.Part).Distinct().ToList();
        IEnumerable<Need> needs = [.. failure.Parts, .. failure.Choices];
        IEnumerable<string> inTheWay = parts.Count == 0
            ? []
            : [$"{ItemPhrases.List(parts.Select(ItemPhrases.The))} {(parts.Count == 1 ? "is" : "are")} in the way"];
        var quickest = failure.Choices.Select(choice => choice.Quickest).OfType<PartOutOfTheWay>().Select(way => way.Part).ToList();
        return StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.List(inTheWay.Concat(failure.Choices.Select(NeedPhrases.IsNot)))} when "
                + ItemPhrases.Doing(failure.Step.Verb, failure.Target),
            ItemPhrases.List(needs.Select(Still).Distinct()),
            needs.Select(need => new LabeledSpan(need.Declared!.Declared, InFront(need, failure.Target)))) with
        {
            Help = $"{ItemPhrases.List(parts.Select(Away).Concat(failure.Choices.Select(choice => ItemPhrases.Either(choice.Ways.Select(Away)))))} first",
            Fixes = quickest.Count == failure.Choices.Length
                ? [.. StepEdits.InsertBefore(run, failure.Step, parts.Concat(quickest).Distinct().Select(part => new NamedAction(Verb.Strip, part)))]
                : [],
        };
    }

    private static string Still(Need need) => need is AnyOf choice
        ? $"{ItemPhrases.List(choice.Ways.Select(way => ItemPhrases.The(way.Item)))} are still fitted"
        : $"{ItemPhrases.The(need.Item)} is still fitted";

    private static string InFront(Need need, MachineItem target)
    {
        var front = need is AnyOf choice
            ? $"here {ItemPhrases.List(choice.Ways.Select(way => ItemPhrases.The(way.Item)))} are in front, and one of them has to go"
            : $"here {ItemPhrases.The(need.Item)} is in front";
        return NeedPhrases.Inherited(need, target) is { } part ? $"{front}, for all of {ItemPhrases.The(part)}" : front;
    }

    private static string Away(Need need) => need is PartOutOfTheWay hider ? Away(hider.Part) : NeedPhrases.Wanted(need);

    private static string Away(Part part) =>
        part.Aside is null ? $"remove {ItemPhrases.The(part)}" : $"move {ItemPhrases.The(part)} aside";
}
