using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ProcScript.Analysis.Settings;

namespace ProcScript.Cli.Verbs;

/// <summary>The settings that <c>new</c> writes beside the first file of a library: what a shop chooses first, each with what it means.</summary>
internal static class StartSettings
{
    private const int Width = 116;

    /// <summary>What a shop chooses first. Members of one group stand together.</summary>
    private static readonly ImmutableArray<Setting> Usual =
    [
        SettingsTable.Language,
        SettingsTable.TextsLanguage,
        SettingsTable.Torque,
        SettingsTable.OnePersonMass,
        SettingsTable.HouseTools,
        SettingsTable.Layout,
        SettingsTable.Labels,
    ];

    /// <summary>The text: JSON with comments, in which every value is the built-in one.</summary>
    public static string Text()
    {
        var text = new StringBuilder();
        Comment(text, "", "What the shop chooses for this library; the file also marks the library's root. Each value is the built-in one: change what you want otherwise. "
            + "`procscript config .` prints all settings there are, and what holds.");
        text.Append("{\n");
        foreach (var group in Usual.GroupBy(setting => GroupOf(setting.Key) is { Length: > 0 } name ? name : setting.Key, StringComparer.Ordinal))
        {
            text.Append(GroupOf(group.First().Key).Length == 0
                ? Member(group.First(), "  ")
                : $"  {Quoted(group.Key)}: {{\n{string.Join(",\n", group.Select(setting => Member(setting, "    ")))}\n  }}").Append(",\n");
        }

        Comment(text, "  ", SettingsKeys.OfFile.First(key => key.Key == SettingsKeys.Severities).What);
        return text.Append("  ").Append(Quoted(SettingsKeys.Severities)).Append(": {}\n}\n").ToString();
    }

    private static string Member(Setting setting, string indent)
    {
        var text = new StringBuilder();
        Comment(text, indent, $"{setting.What} {char.ToUpperInvariant(setting.Choices[0])}{setting.Choices[1..]}.");
        return text.Append(indent).Append(Quoted(setting.Key[(setting.Key.IndexOf('.', StringComparison.Ordinal) + 1)..])).Append(": ").Append(Value(setting)).ToString();
    }

    private static string GroupOf(string key) => key.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot ? key[..dot] : "";

    private static string Quoted(string key) => $"\"{key}\"";

    private static string Value(Setting setting)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            setting.Write(writer, setting.BuiltInValue);
        }

        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    /// <summary>What is Markdown elsewhere, as lines of comment.</summary>
    private static void Comment(StringBuilder text, string indent, string markdown)
    {
        var line = 0;
        foreach (var word in markdown.Replace("`", "", StringComparison.Ordinal).Split(' '))
        {
            if (line == 0 || line + 1 + word.Length > Width)
            {
                text.Append(line == 0 ? "" : "\n").Append(indent).Append("//");
                line = indent.Length + 2;
            }

            text.Append(' ').Append(word);
            line += 1 + word.Length;
        }

        text.Append('\n');
    }
}
