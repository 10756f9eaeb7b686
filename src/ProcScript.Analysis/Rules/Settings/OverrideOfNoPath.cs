using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>An override says no paths, or something that is no glob.</summary>
public sealed class OverrideOfNoPath : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7020", "override-of-no-path", "An override that is for no path", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An override has no `paths`, or a pattern in it that is no glob. Globs count from the root of the library: `*` "
            + "stands for any letters of a name, `**` for any folders.",
        Why: "What it chooses holds nowhere.",
        Wrong: """
            // file: procscript.json
            { "overrides": [{ "wording": "neutral" }] }
            """,
        Right: """
            // file: procscript.json
            { "overrides": [{ "paths": "finnish/**", "wording": "neutral" }] }
            """);

    internal static Finding WithoutPaths(SourceSpan place) =>
        new(Id, "the override does not say for which paths", place)
        {
            Help = "add `\"paths\": \"folder/**\"`, or move what it chooses out of the override",
        };

    internal static Finding NoGlob(string glob, string reason, SourceSpan place) =>
        new(Id, $"`{glob}` names no paths: {reason}", place)
        {
            Help = "write a path from the root of the library, such as `catalog/**` or `**/draft-*.proc`",
        };
}
