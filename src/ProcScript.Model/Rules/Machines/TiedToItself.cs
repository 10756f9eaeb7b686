using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A joint with both ends in one part.</summary>
public sealed class TiedToItself : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2004", "tied-to-itself", "A joint with both ends in one part", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint ties the part that declares it to the part after `to`, and both are the same.",
        Why: "Such a joint holds nothing, so the part could be taken off with the true joint still closed.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins to trim }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
            }
            """);

    internal static Finding At(Joint joint, SourceSpan place) =>
        new(Id, $"`{joint.Name}` ties the {joint.Owner.Title} to itself", place, "the part that the joint stands in")
        {
            Related = [new LabeledSpan(joint.Declared, "declared here")],
            Help = "name the other end after `to`; without `to` it is the part around it, or the frame",
        };
}
