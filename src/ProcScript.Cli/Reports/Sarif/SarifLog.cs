using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Analysis.Reports;

namespace ProcScript.Cli.Reports.Sarif;

/// <summary>A log of the Static Analysis Results Interchange Format, version 2.1.0.</summary>
internal static class SarifLog
{
    /// <summary>How many results GitHub takes of a run; it refuses a log with more.</summary>
    public const int MostResults = 25_000;

    private const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    private static readonly JsonWriterOptions Layout = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, Indented = true, NewLine = "\n" };

    /// <summary>One run.</summary>
    public static string Render(CheckOutcome outcome)
    {
        var listed = outcome.Listed.Take(MostResults).ToList();
        var results = listed.Concat(outcome.Report.Silenced.Take(MostResults - listed.Count)).ToList();
        var left = outcome.Report.Findings.Length + outcome.Report.Silenced.Length - results.Count;
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes, Layout))
        {
            json.WriteStartObject();
            json.WriteString("$schema", Schema);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            WriteRun(json, outcome, results, left);
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length) + "\n";
    }

    private static void WriteRun(Utf8JsonWriter json, CheckOutcome outcome, List<ReportedFinding> results, int left)
    {
        SarifRules rules = new(results.Select(result => result.Finding.Rule.Code));
        SarifLocations locations = new(json, outcome.Report, outcome.Paths);
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "procscript");
        json.WriteString("version", ProductVersion.Text);
        rules.Write(json);
        json.WriteEndObject();
        json.WriteEndObject();
        WriteInvocation(json, outcome, locations, left);
        json.WriteStartObject("originalUriBaseIds");
        json.WriteStartObject(SarifLocations.Root);
        // Where the repository lies is the machine's affair: whoever reads the log has it somewhere else.
        WriteText(json, "description", "The root of the repository.");
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteString("columnKind", "utf16CodeUnits");
        json.WriteStartArray("results");
        SarifResults writer = new(json, outcome, rules, locations);
        foreach (var result in results)
        {
            writer.Write(result);
        }

        json.WriteEndArray();
    }

    private static void WriteInvocation(Utf8JsonWriter json, CheckOutcome outcome, SarifLocations locations, int left)
    {
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", !outcome.HasUnreadableInput);
        if (outcome.Time is { } time)
        {
            json.WriteString("startTimeUtc", Utc(time.Started));
            json.WriteString("endTimeUtc", Utc(time.Started + time.Elapsed));
        }

        json.WriteStartArray("toolExecutionNotifications");
        foreach (var gap in NotChecked.Of(outcome.Report))
        {
            json.WriteStartObject();
            json.WriteString("level", "note");
            WriteText(json, "message", $"Not checked: {gap.What}, for {gap.Why}.");
            if (gap.Place is { } place)
            {
                json.WriteStartArray("locations");
                locations.Write(place);
                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        if (left > 0)
        {
            json.WriteStartObject();
            json.WriteString("level", "warning");
            WriteText(json, "message", string.Create(CultureInfo.InvariantCulture, $"{left} more findings are not listed."));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
    }

    /// <summary>Writes a message.</summary>
    internal static void WriteText(Utf8JsonWriter json, string property, string text)
    {
        json.WriteStartObject(property);
        json.WriteString("text", text);
        json.WriteEndObject();
    }

    private static string Utc(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
}
