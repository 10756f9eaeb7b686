using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>A <c>do</c> of a procedure on another machine.</summary>
public sealed class NotAProcedureOfThisMachine : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1115", "not-a-procedure-of-this-machine", "A procedure on another machine", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `do` calls a procedure that is written for another machine.",
        Why: "Its steps speak of parts that this machine does not have.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 2 pin as trim_pins } }
            machine boom "boom" { part cap "cap" { held by 2 pin as cap_pins } }
            procedure cap_off "Take the cap off" on boom {
              stage "Cap" { release cap_pins  remove cap }
            }
            procedure trim_out "Take the trim off" on cab {
              do cap_off
              stage "Trim" { release trim_pins  remove trim }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 2 pin as trim_pins } }
            machine boom "boom" { part cap "cap" { held by 2 pin as cap_pins } }
            procedure cap_off "Take the cap off" on boom {
              stage "Cap" { release cap_pins  remove cap }
            }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim }
            }
            """);

    internal static Finding At(ProcedureOutline target, MachineOutline machine, SourceSpan place) =>
        new(
            Id,
            $"`{target.Symbol.Name}` is a procedure on `{target.Machine!.Symbol.Name}`, not on `{machine.Symbol.Name}`",
            place,
            "another machine")
        {
            Related = [new LabeledSpan(target.Symbol.Declared, $"written for `{target.Machine.Symbol.Name}`")],
            Help = $"write a procedure on `{machine.Symbol.Name}`",
        };
}
