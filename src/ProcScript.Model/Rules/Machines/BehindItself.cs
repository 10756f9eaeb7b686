using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A part, or a joint of it, that lies behind the part itself, which cannot go aside.</summary>
public sealed class BehindItself : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2012", "behind-itself", "Something that lies behind its own part", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part, or a joint that holds it, is reached only once the part itself is out of the way, and the part cannot go aside; or a part "
            + "waits for what lies in it, while a condition of a part binds all that lies in it.",
        Why: "The part stays until the joint is open, and the joint stays hidden until the part is away.",
        Wrong: """
            clip pin "push pin"
            connector two_way "2-way connector"
            machine cab "cab" {
              part harness "harness" { held by 1 pin as harness_pin }
              part lamp "lamp" {
                held by 2 pin as lamp_pins
                wired by 1 two_way as lamp_plug { to harness  behind lamp }
              }
            }
            """,
        Right: """
            clip pin "push pin"
            connector two_way "2-way connector"
            machine cab "cab" {
              part harness "harness" { held by 1 pin as harness_pin }
              part lamp "lamp" {
                held by 2 pin as lamp_pins
                wired by 1 two_way as lamp_plug { to harness  behind lamp }
                aside "Let it hang on its wire." needs lamp_pins
              }
            }
            """);

    /// <summary>A condition of a part about what lies in it.</summary>
    internal static Finding Inside(Part part, Condition condition)
    {
        var inner = condition.Item is Joint joint ? $"`{joint.Name}`" : $"the {condition.Item.Title}";
        return new Finding(
            Id,
            $"all of the {part.Title} waits for {inner}, which lies in it and so waits for itself",
            condition.Declared,
            $"binds the {part.Title} with all that lies in it")
        {
            Related = [new LabeledSpan(condition.Item.Declared, $"lies in the {part.Title}")],
            Help = $"where only the {part.Title} itself cannot leave before, write `way` before the condition",
        };
    }

    internal static Finding At(MachineItem item, Part part, Condition behind) =>
        new(
            Id,
            item == part
                ? $"the {part.Title} lies behind itself, and cannot go aside"
                : $"the {item.Title} lies behind the {part.Title} that it belongs to, which cannot go aside",
            behind.Declared)
        {
            Related = item == part ? [] : [new LabeledSpan(part.Declared, "this part has no `aside`")],
            Help = $"say how the {part.Title} goes `aside`, or take the `behind` out",
        };
}
