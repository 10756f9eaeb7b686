using System.Globalization;
using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Analysis.Reports;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Reports.Sarif;

/// <summary>Writes findings as results.</summary>
/// <param name="json">Where to.</param>
/// <param name="outcome">What they belong to.</param>
/// <param name="rules">The rules of the run.</param>
/// <param name="locations">Writes places.</param>
internal sealed class SarifResults(Utf8JsonWriter json, CheckOutcome outcome, SarifRules rules, SarifLocations locations)
{
    /// <summary>What the level of a severity is called.</summary>
    public static string LevelOf(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    /// <summary>Writes one.</summary>
    public void Write(ReportedFinding reported)
    {
        var finding = reported.Finding;
        json.WriteStartObject();
        json.WriteString("ruleId", finding.Rule.Code);
        json.WriteNumber("ruleIndex", rules.IndexOf(finding.Rule.Code));
        json.WriteString("level", LevelOf(reported.Severity));
        SarifLog.WriteText(json, "message", FindingText.Of(finding));
        json.WriteStartArray("locations");
        locations.Write(finding.Primary);
        json.WriteEndArray();
        if (!finding.Related.IsEmpty)
        {
            json.WriteStartArray("relatedLocations");
            foreach (var related in finding.Related)
            {
                locations.Write(related.Place, related.Label);
            }

            json.WriteEndArray();
        }

        WriteFingerprints(reported.Fingerprint);
        WriteFixes(finding);
        WriteSilencing(reported.Silencing);
        json.WriteEndObject();
    }

    /// <summary>The first is the name by which GitHub knows a finding again, the second our own.</summary>
    private void WriteFingerprints(Fingerprint fingerprint)
    {
        json.WriteStartObject("partialFingerprints");
        json.WriteString("primaryLocationLineHash", string.Create(CultureInfo.InvariantCulture, $"{fingerprint.Key}:{fingerprint.Ordinal}"));
        json.WriteString("procscriptFinding/v1", fingerprint.ToString());
        json.WriteEndObject();
    }

    private void WriteFixes(Finding finding)
    {
        var fixes = finding.Fixes.Where(fix => fix.Grade != FixGrade.DisplayOnly).ToList();
        if (fixes.Count == 0)
        {
            return;
        }

        json.WriteStartArray("fixes");
        foreach (var fix in fixes)
        {
            json.WriteStartObject();
            SarifLog.WriteText(json, "description", fix.Grade == FixGrade.Safe ? fix.Title : $"{fix.Title} (needs a look)");
            json.WriteStartArray("artifactChanges");
            foreach (var file in fix.Edits.GroupBy(edit => edit.Place.Path, StringComparer.Ordinal))
            {
                Write(file.Key, file);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void Write(string path, IEnumerable<TextEdit> edits)
    {
        json.WriteStartObject();
        locations.WriteFile(path);
        json.WriteStartArray("replacements");
        foreach (var edit in edits)
        {
            json.WriteStartObject();
            locations.WriteRegion("deletedRegion", edit.Place);
            SarifLog.WriteText(json, "insertedContent", edit.NewText);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Readers take it that either all results say whether they are suppressed, or none.</summary>
    private void WriteSilencing(Silencing? silencing)
    {
        if (outcome.Report.Baseline is not null)
        {
            json.WriteString("baselineState", silencing is { Kind: SilencingKind.Baseline } ? "unchanged" : "new");
        }

        if (outcome.Report.Silenced.IsEmpty)
        {
            return;
        }

        json.WriteStartArray("suppressions");
        if (silencing is not null)
        {
            json.WriteStartObject();
            json.WriteString("kind", silencing.Kind == SilencingKind.Comment ? "inSource" : "external");
            json.WriteString("status", "accepted");
            json.WriteString("justification", silencing.Kind == SilencingKind.Comment ? silencing.Reason : "Known in the baseline.");
            json.WritePropertyName("location");
            locations.Write(silencing.Place);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
