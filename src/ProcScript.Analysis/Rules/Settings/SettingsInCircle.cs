using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>Settings extend each other in a circle.</summary>
public sealed class SettingsInCircle : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7012", "settings-in-circle", "Settings that extend each other in a circle", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A settings file extends itself, straight away or by way of others.",
        Why: "Each would have to outweigh the other, so that nobody could say which value holds.",
        Wrong: """
            // file: procscript.json
            { "extends": "shop.json" }
            // file: shop.json
            { "extends": "shop.json", "wording": "neutral" }
            """,
        Right: """
            // file: procscript.json
            { "extends": "shop.json" }
            // file: shop.json
            { "wording": "neutral" }
            """);

    internal static Finding At(string path, ImmutableArray<(string To, SourceSpan Place)> way) =>
        new(Id, $"`{path}` is extended by what it extends itself", way[^1].Place, "closes the circle")
        {
            Related = [.. way[..^1].Select(step => new LabeledSpan(step.Place, $"leads to `{step.To}`"))],
            Help = "take one of these out; what several files share belongs in a file that extends none of them",
        };
}
