using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A settings file that another extends is not there, or one that is there cannot be read.</summary>
public sealed class SettingsFileMissing : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7011", "settings-file-missing", "A settings file that is not there or cannot be read", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A settings file that another one extends is not there, lies outside of the library, or cannot be read. The "
            + "path counts from the file that it stands in.",
        Why: "What the shop chose there does not hold, and nobody sees it from the findings that are missing or too many.",
        Wrong: """
            // file: procscript.json
            { "extends": "shop/settings.json" }
            """,
        Right: """
            // file: procscript.json
            { "extends": "shop/settings.json" }
            // file: shop/settings.json
            { "wording": "neutral" }
            """);

    internal static Finding At(string path, SourceReading reading, SourceSpan place) =>
        new(Id, $"the settings `{path}` {Trouble(reading)}", place)
        {
            Help = reading.Outcome == SourceOutcome.Missing ? "write the path from this file on, or add the file" : "save it as a file of UTF-8 text",
        };

    internal static Finding Outside(string path, SourceSpan place) =>
        new(Id, $"`{path}` leads out of the library", place)
        {
            Help = "settings can extend files inside the library only, so that every copy of it is checked alike",
        };

    private static string Trouble(SourceReading reading) => reading.Outcome switch
    {
        SourceOutcome.Missing => "are not there",
        SourceOutcome.TooLarge => "are larger than any settings",
        _ => $"cannot be read{(reading.Detail.Length > 0 ? $": {reading.Detail.TrimEnd('.')}" : "")}",
    };
}
