using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A condition that its item cannot meet.</summary>
public sealed class WrongConditionWord : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2008", "wrong-condition-word", "A condition that does not suit its item", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "`needs` says what must be true of an item, in words that suit its sort: a control is `at` a position, an energy `live` or "
            + "`isolated`, a fluid `full` or `empty`, a part `out`, `fitted`, `aside` or `supported`, a joint `off` or `slack`.",
        Why: "A condition that cannot be true is not checked by anybody.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part lamp "lamp" { held by 1 pin as lamp_pin }
              part trim "trim" { needs lamp isolated  held by 2 pin as trim_pins }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part lamp "lamp" { held by 1 pin as lamp_pin }
              part trim "trim" { needs lamp out  held by 2 pin as trim_pins }
            }
            """);

    internal static Finding At(MachineItem item, NeedSyntax need, BindingPlace place)
    {
        var said = need.Position is { } position ? $"at {position.Text}" : need.State?.Text;
        var message = said is null
            ? $"it is not said what must be true of the {item.Title}"
            : $"the {item.Title} is {ItemWords.Sort(item)}, which is never `{said}`";
        return new Finding(Id, message, place.At(need.Span))
        {
            Related = [new LabeledSpan(item.Declared, $"declared as {ItemWords.Sort(item)} here")],
            Help = $"write {WordList.Or(Choices(item))}",
        };
    }

    private static IEnumerable<string> Choices(MachineItem item)
    {
        string[] words = item switch
        {
            Energy => ["live", "isolated"],
            Fluid => ["full", "empty"],
            Part => ["out", "fitted", "aside", "supported"],
            Joint => ["off", "slack"],
            Control control => [.. control.Positions.Select(position => "at " + position)],
            _ => [],
        };
        return words.Select(word => $"`{item.Name} {word}`");
    }
}
