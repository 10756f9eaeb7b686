using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A joint that stands in no part.</summary>
public sealed class JointOutsidePart : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2009", "joint-outside-a-part", "A joint that stands in no part", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint ties the part that it stands in to another part or to the frame. This one stands in no part.",
        Why: "It is not known what the joint holds, so it is not known what must wait until it is open.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              held by 2 pin as trim_pins
              part trim "trim"
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
            }
            """);

    internal static Finding At(JointSyntax joint, SourceSpan place) =>
        new(Id, $"the joint `{joint.Name.Name.Text}` stands in no part", place, "what does it hold?")
        {
            Help = "write it inside the part that it holds",
        };
}
