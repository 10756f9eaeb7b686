using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A settings file is no JSON.</summary>
public sealed class SettingsNotJson : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7010", "settings-not-json", "A settings file that cannot be read as JSON", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A settings file is not an object in JSON. Comments (`//` and `/* */`) and a comma after the last member are "
            + "allowed, for people write it.",
        Why: "Nothing that it chooses holds, and the checks run as if the shop had chosen nothing.",
        Wrong: """
            // file: procscript.json
            {
              "wording" = "neutral"
            }
            """,
        Right: """
            // file: procscript.json
            {
              // We write in Finnish.
              "wording": "neutral",
            }
            """);

    internal static Finding At(string reason, SourceSpan place) =>
        new(Id, $"the settings cannot be read: {reason}", place, "no JSON from here on")
        {
            Help = "write members as `\"key\": value`, parted by commas, in one pair of braces",
        };

    internal static Finding NoObject(string sort, SourceSpan place) =>
        new(Id, $"the settings are {sort}, and not an object in braces", place)
        {
            Help = "write members as `\"key\": value`, parted by commas, in one pair of braces",
        };
}
