using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>A step says how many of which kind a joint has, and the machine says so already.</summary>
public sealed class PiecesInStep : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1122", "pieces-in-step", "A step says what a joint is made of", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step says how many of which kind a joint has, as in `undo 4 m10x30 seat_bolts`, and the machine has the joint already.",
        Why: "Count and kind stand in the machine, once for all procedures. In a step they are there for `procscript draft`, which declares what the "
            + "machine does not have yet. Two places that say the same would come to say two things.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 6 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release 6 pin trim_pins  remove trim }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 6 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim }
            }
            """);

    internal static Finding At(MachineItem item, PiecesSyntax pieces, SourceSpan upToItem, SourceSpan place) =>
        new(Id, $"the machine has `{item.Name}` already, and says what it is", place, "count and kind stand in the machine")
        {
            Related = [new LabeledSpan(item.Declared, "declared here")],
            Help = $"write `{item.Name}` alone; for some of them, `{pieces.Count.Value} of {item.Name}`",
            Fixes =
            [
                new Fix(
                    "Take count and kind out of the step",
                    item is Joint joint && joint.Count == pieces.Count.Value && joint.Kind.Name == pieces.Kind.Text ? FixGrade.Safe : FixGrade.NeedsLook,
                    [new TextEdit(upToItem, "")]),
            ],
        };
}
