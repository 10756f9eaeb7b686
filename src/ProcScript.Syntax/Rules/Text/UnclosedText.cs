using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A quoted text meets the end of its line before its closing quote.</summary>
public sealed class UnclosedText : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1003", "unclosed-text", "A text without its closing quote", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A quoted text meets the end of its line before its closing quote.",
        Why: "Where the text ends is unknown, and a text never runs over its line.",
        Wrong: """tool socket_13 "13 mm socket""",
        Right: """tool socket_13 "13 mm socket" """);

    internal static Finding At(SourceSpan place) => new(Id, "This text has no closing quote", place);
}
