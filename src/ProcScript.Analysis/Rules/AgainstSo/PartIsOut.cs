using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.AgainstSo;

/// <summary>A text names a part that is out by then. It follows from the run; no source.</summary>
public sealed class PartIsOut : AgainstSoRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8101", "part-is-out", "A text names a part that is out", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `how`, `task`, `check`, `measure`, `photo`, `store` or an alert of a step names a part by its title, and the part is out before the step and after it. "
            + "What a sentence says of before, after, off, old or new is left alone, and so is work on the bench and between strip and refit.",
        Why: "Whoever reads it looks for something that is not there, or thinks that it should be. Mostly the text is older than the order of the steps.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "front guard" { held by 4 pin as guard_pins }
              part tray "tray" { held by 2 pin as tray_pins }
            }

            procedure tray_off "Take the tray off" on press {
              stage "Tray" {
                release guard_pins
                remove guard
                release tray_pins { how "Hold the tray against the front guard." }
                remove tray
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "front guard" { held by 4 pin as guard_pins }
              part tray "tray" { held by 2 pin as tray_pins }
            }

            procedure tray_off "Take the tray off" on press {
              stage "Tray" {
                release guard_pins
                remove guard
                release tray_pins { how "Hold the tray against the frame." }
                remove tray
              }
            }
            """);

    /// <inheritdoc/>
    private protected override string Help => "let the text speak of what is there, or let the step stand where the part is in";

    /// <inheritdoc/>
    private protected override bool IsAbout(MachineItem item) => item is Part;

    /// <inheritdoc/>
    private protected override string State(MachineItem item) => "is out";
}
