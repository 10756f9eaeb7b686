using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A property that is given twice where once is all.</summary>
public sealed class PropertyTwice : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1112", "property-twice", "A property that is given twice", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A block gives a property twice that it can have only once.",
        Why: "Of two torques or two masses one is wrong, and nobody can tell which.",
        Wrong: """
            tool socket "13 mm socket" { size 13 mm  size 16 mm }
            """,
        Right: """
            tool socket "13 mm socket" { size 13 mm }
            """);

    /// <summary>Of a property.</summary>
    internal static Finding At(string keyword, SourceSpan later, SourceSpan earlier, SourceSpan whole) =>
        new(Id, $"`{keyword}` is given twice", later, "the second time")
        {
            Related = [new LabeledSpan(earlier, "given here first")],
            Help = "keep the right one",
            Fixes = [new Fix($"Take the second `{keyword}` out", FixGrade.NeedsLook, [new TextEdit(whole, "")])],
        };

    /// <summary>Of a name after a property that takes one.</summary>
    internal static Finding Name(string keyword, SourceSpan later, SourceSpan earlier) =>
        new(Id, $"`{keyword}` takes one name", later, "the second name")
        {
            Related = [new LabeledSpan(earlier, "the first name")],
            Help = "keep the right one",
        };
}
