using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A setting has a value of another sort.</summary>
public sealed class WrongSortOfSetting : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7014", "wrong-sort-of-setting", "A setting with a value of another sort", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A setting is a number where a text belongs, a text where a list belongs, and so on.",
        Why: "The value says nothing, and what is built in holds instead.",
        Wrong: """
            // file: procscript.json
            { "limits": { "onePersonMass": 20 } }
            """,
        Right: """
            // file: procscript.json
            { "limits": { "onePersonMass": "20 kg" } }
            """);

    internal static Finding At(string key, string sort, string choices, SourceSpan place) =>
        new(Id, $"`{key}` is {sort}", place)
        {
            Help = $"write {choices}",
        };
}
