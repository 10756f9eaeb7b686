using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.AgainstSo;

/// <summary>A check says of a joint that it is closed, and it is open. It follows from the run; no source.</summary>
public sealed class JointIsOpen : AgainstSoRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8104", "joint-is-open", "A check of a joint that is open", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A check or a measurement names a joint by its name in words (`lamp_plug` is *the lamp plug*) and says that it is tight, home or locked, and none of it is closed then.",
        Why: "It can only be ticked unread. A check of a joint stands after the joint is closed.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              part guard "guard"
              part lamp "lamp" { wired by 1 plug_2 as lamp_plug { to guard } }
            }

            procedure lamp_off "Take the lamp off" on press {
              stage "Lamp" {
                unplug lamp_plug
                remove lamp
              }
              refit { check "The lamp plug is home." before plug lamp_plug }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              part guard "guard"
              part lamp "lamp" { wired by 1 plug_2 as lamp_plug { to guard } }
            }

            procedure lamp_off "Take the lamp off" on press {
              stage "Lamp" {
                unplug lamp_plug
                remove lamp
              }
              refit { check "The lamp plug is home." after plug lamp_plug }
            }
            """);

    /// <inheritdoc/>
    private protected override string Help => "let the check stand `after` the step that closes the joint";

    /// <inheritdoc/>
    private protected override bool IsAbout(MachineItem item) => item is Joint;

    /// <inheritdoc/>
    private protected override string State(MachineItem item) => "is open";
}
