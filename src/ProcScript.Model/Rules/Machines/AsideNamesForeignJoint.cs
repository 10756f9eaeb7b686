using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A way aside that names a joint of other parts.</summary>
public sealed class AsideNamesForeignJoint : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC2005", "aside-names-foreign-joint", "A way aside that names a joint of other parts", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "After `aside … needs` stand the joints that must be open or slack for the part to move. This one ties neither the part "
            + "nor anything in it.",
        Why: "The joint that does hold the part is missing from the list, and somebody pulls at a part that is still tight.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part seat "seat" { held by 4 pin as seat_pins  aside "Tilt it." needs trim_pins }
              part trim "trim" { held by 2 pin as trim_pins }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part seat "seat" { held by 4 pin as seat_pins  aside "Tilt it." needs seat_pins }
              part trim "trim" { held by 2 pin as trim_pins }
            }
            """);

    internal static Finding At(Part part, Joint joint, SourceSpan place) =>
        new(Id, $"`{joint.Name}` does not hold the {part.Title}", place, "no end of it lies in the part")
        {
            Related = [new LabeledSpan(joint.Declared, $"belongs to the {joint.Owner.Title}")],
            Help = $"name the joints that hold the {part.Title}; write `{joint.Name} off` if it must be open for another reason",
        };
}
