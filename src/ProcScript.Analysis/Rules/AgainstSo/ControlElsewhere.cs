using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.AgainstSo;

/// <summary>A text says where a control stands, and it stands elsewhere. It follows from the run; no source.</summary>
public sealed class ControlElsewhere : AgainstSoRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8103", "control-elsewhere", "A text has a control stand elsewhere", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A text of a step says that a control is at one of its positions, as in *with the selector at neutral*, and at that moment it stands at another.",
        Why: "One of the two is wrong, and whoever stands before the machine cannot tell which.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              control selector "selector" { neutral, down }
              part guard "guard" {
                needs selector at down
                held by 4 pin as guard_pins
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                set selector to down
                release guard_pins { how "Work with the selector at neutral." }
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              control selector "selector" { neutral, down }
              part guard "guard" {
                needs selector at down
                held by 4 pin as guard_pins
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                set selector to down
                release guard_pins { how "Work with the selector at down." }
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    private protected override string Help => "write the position that it has then, or a `set` before the step";

    /// <inheritdoc/>
    private protected override bool IsAbout(MachineItem item) => item is Control;

    /// <inheritdoc/>
    private protected override string State(MachineItem item) => "stands elsewhere";
}
