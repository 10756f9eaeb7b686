using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A rule that is an error by itself is given a lower severity.</summary>
public sealed class SeverityBelowError : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7018", "severity-below-error", "An error that is to count for less", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A rule whose findings are errors is given a lower severity, or a family of nothing but such rules. It stays an "
            + "error.",
        Why: "An error says that the text is not understood, that the work cannot be done as written, or that the refit does "
            + "not put the machine back. A procedure that is not proven is not worked from, whatever a settings file says. "
            + "Where one line is right all the same, allow it there, with the reason.",
        Wrong: """
            // file: procscript.json
            { "severities": { "removed-while-held": "warning" } }
            """,
        Right: """
            // file: procscript.json
            { "severities": { "long-sentence": "warning" } }
            """);

    internal static Finding At(string key, ImmutableArray<RuleInfo> rules, Severity? severity, SourceSpan place) =>
        new(
            Id,
            rules is [var only]
                ? $"{only.Code} ({only.Name}) is an error and stays one"
                : $"all rules of `{key}` are errors and stay errors",
            place,
            severity is null ? "cannot be off" : "cannot be less")
        {
            Help = "take it out; where one line is right all the same, write `// proc: allow … because \"…\"` above it",
        };
}
