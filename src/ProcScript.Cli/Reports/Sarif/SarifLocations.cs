using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Reports.Sarif;

/// <summary>Writes places.</summary>
/// <param name="json">Where to.</param>
/// <param name="report">Has the texts.</param>
/// <param name="paths">How files are named.</param>
internal sealed class SarifLocations(Utf8JsonWriter json, LibraryReport report, RepositoryPaths paths)
{
    /// <summary>What relative addresses count from.</summary>
    public const string Root = "SRCROOT";

    /// <summary>Writes a location, with words on it where there are some.</summary>
    public void Write(SourceSpan place, string label = "")
    {
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        WriteFile(place.Path);
        WriteRegion("region", place);
        json.WriteEndObject();
        if (label.Length > 0)
        {
            SarifLog.WriteText(json, "message", label);
        }

        json.WriteEndObject();
    }

    /// <summary>Writes the address of a file.</summary>
    public void WriteFile(string path)
    {
        var uri = SourceUri.Of(paths.Of(path));
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", uri);
        if (SourceUri.IsRelative(uri))
        {
            json.WriteString("uriBaseId", Root);
        }

        json.WriteEndObject();
    }

    /// <summary>Writes a stretch of a file; none where the file could not be read.</summary>
    public void WriteRegion(string property, SourceSpan place)
    {
        if (report.TextOf(place.Path) is null)
        {
            return;
        }

        var (start, end) = report.LinesOf(place);
        json.WriteStartObject(property);
        json.WriteNumber("startLine", start.Line + 1);
        json.WriteNumber("startColumn", start.Column + 1);
        json.WriteNumber("endLine", end.Line + 1);
        json.WriteNumber("endColumn", end.Column + 1);
        json.WriteEndObject();
    }
}
