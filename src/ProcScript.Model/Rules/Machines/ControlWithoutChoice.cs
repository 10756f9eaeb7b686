using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A control with fewer than two positions.</summary>
public sealed class ControlWithoutChoice : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC2006", "control-without-choice", "A control with fewer than two positions", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A control lists its positions, the one it rests in first. Here there are fewer than two.",
        Why: "What cannot be set cannot be in the way, and cannot be put back.",
        Wrong: """
            machine cab "cab" {
              control column "steering column" { up }
            }
            """,
        Right: """
            machine cab "cab" {
              control column "steering column" { up, down }
            }
            """);

    internal static Finding At(string name, int positions, SourceSpan place) =>
        new(Id, $"the control `{name}` has {(positions == 0 ? "no position" : "only one position")}", place)
        {
            Help = "list its positions, the one it rests in first: `{ up, down }`",
        };
}
