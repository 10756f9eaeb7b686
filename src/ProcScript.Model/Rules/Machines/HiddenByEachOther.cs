using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Rules.Machines;

/// <summary>Parts that hide each other in a round.</summary>
public sealed class HiddenByEachOther : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2001", "hidden-by-each-other", "Parts that hide each other", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Each of these parts lies behind the next one, the last behind the first, and none of them can go aside.",
        Why: "None of them can ever come off first, so no procedure can reach any of them.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { behind lamp  held by 2 pin as trim_pins }
              part lamp "lamp" { behind trim  held by 1 pin as lamp_pin }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
              part lamp "lamp" { behind trim  held by 1 pin as lamp_pin }
            }
            """);

    /// <summary>The round: each condition says that the one before lies behind its part.</summary>
    internal static Finding At(ImmutableArray<(Part Hidden, Condition Behind)> round)
    {
        var titles = round.Select(step => $"the {step.Hidden.Title}");
        return new Finding(
            Id,
            $"{WordList.And(titles)} hide each other, and none of them can go aside",
            round[0].Behind.Declared,
            Words(round[0]))
        {
            Related = [.. round[1..].Select(step => new LabeledSpan(step.Behind.Declared, Words(step)))],
            Help = "one of them comes off first: take its `behind` out, or say how it goes `aside`",
        };
    }

    private static string Words((Part Hidden, Condition Behind) step) =>
        $"the {step.Hidden.Title} lies behind the {step.Behind.Item.Title}";
}
