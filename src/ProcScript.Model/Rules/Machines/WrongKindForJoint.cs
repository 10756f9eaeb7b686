using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A joint of a kind that does not suit it.</summary>
public sealed class WrongKindForJoint : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC2003", "wrong-kind-for-joint", "A kind that does not suit the joint", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Fasteners, clips and bonds hold; connectors wire; lines pipe; clips cover; clips and bonds lock. This joint is made of another sort.",
        Why: "Each sort has its own verbs and dangers: a plug that is written as a bolt would be undone with a live circuit.",
        Wrong: """
            clip pin "push pin"
            connector two_way "2-way connector"
            machine cab "cab" {
              part lamp "lamp" { held by 2 pin as lamp_pins  held by 1 two_way as lamp_plug }
            }
            """,
        Right: """
            clip pin "push pin"
            connector two_way "2-way connector"
            machine cab "cab" {
              part lamp "lamp" { held by 2 pin as lamp_pins  wired by 1 two_way as lamp_plug }
            }
            """);

    internal static Finding At(Kind kind, JointRole role, bool isLock, SourceSpan place)
    {
        var (word, suits) = role switch
        {
            JointRole.Wired => ("wired by", "a connector"),
            JointRole.Piped => ("piped by", "a line"),
            JointRole.Cover when isLock => ("locked by", "a clip or a bond"),
            JointRole.Cover => ("covered by", "a clip"),
            _ => ("held by", "a fastener, a clip or a bond"),
        };
        var cure = kind.Category switch
        {
            KindCategory.Connector => "`wired by`",
            KindCategory.Line => "`piped by`",
            _ => "`held by`",
        };
        return new Finding(Id, $"`{word}` takes {suits}, and the {kind.Title} is {Sort(kind.Category)}", place)
        {
            Related = [new LabeledSpan(kind.Declared, $"declared as {Sort(kind.Category)} here")],
            Help = $"name {suits}, or write {cure}",
        };
    }

    private static string Sort(KindCategory category) => category switch
    {
        KindCategory.Fastener => "a fastener",
        KindCategory.Clip => "a clip",
        KindCategory.Connector => "a connector",
        KindCategory.Line => "a line",
        _ => "a bond",
    };
}
