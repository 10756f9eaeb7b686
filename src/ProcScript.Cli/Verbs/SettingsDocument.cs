using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Analysis.Settings;

namespace ProcScript.Cli.Verbs;

/// <summary>The settings of a path for other programs, as JSON.</summary>
internal static class SettingsDocument
{
    /// <summary>Writes them.</summary>
    public static void Write(TextWriter output, string path, PathSettings chosen, OriginWords origins)
    {
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            writer.WriteStartObject();
            writer.WriteString("path", path);
            writer.WriteStartObject("settings");
            foreach (var setting in SettingsTable.All)
            {
                var (value, origin) = chosen.Look(setting);
                writer.WriteStartObject(setting.Key);
                writer.WritePropertyName("value");
                setting.Write(writer, value);
                WriteOrigin(writer, origin, origins);
                writer.WriteEndObject();
            }

            writer.WriteEndObject();
            writer.WriteStartObject("severities");
            foreach (var rule in RuleCatalog.All)
            {
                var (severity, origin) = chosen.LookSeverity(rule.Info);
                writer.WriteStartObject(rule.Info.Code);
                writer.WriteString("name", rule.Info.Name);
                writer.WriteString("value", SeverityChoice.WordFor(severity));
                WriteOrigin(writer, origin, origins);
                writer.WriteEndObject();
            }

            writer.WriteEndObject();
            writer.WriteEndObject();
        }

        output.Write(Encoding.UTF8.GetString(bytes.ToArray()));
        output.Write('\n');
    }

    private static void WriteOrigin(Utf8JsonWriter writer, SettingOrigin origin, OriginWords origins)
    {
        writer.WriteStartObject("origin");
        if (origins.FileOf(origin) is var (file, line))
        {
            writer.WriteString("file", file);
            writer.WriteNumber("line", line);
        }
        else
        {
            writer.WriteString("source", origin.Words);
        }

        writer.WriteEndObject();
    }
}
