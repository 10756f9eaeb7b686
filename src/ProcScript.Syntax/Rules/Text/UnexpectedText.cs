using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A word stands where it cannot stand.</summary>
public sealed class UnexpectedText : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1001", "unexpected-text", "A word that cannot stand here", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A word stands where the language has no place for it, or one that belongs here is missing.",
        Why: "What was meant is unknown, so nothing of it can be checked.",
        Wrong: """tool socket_13 13 mm""",
        Right: """tool socket_13 "13 mm socket" """);

    internal static Finding At(SourceSpan place, string found) => new(Id, $"{found} cannot stand here", place);
}
