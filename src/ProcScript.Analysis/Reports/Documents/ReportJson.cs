using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ProcScript.Analysis.Reports.Documents;

/// <summary>The published forms of what a check comes to; their schemas describe them.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ReportDocument))]
[JsonSerializable(typeof(SuppressionsDocument))]
[JsonSerializable(typeof(AuditDocument))]
public sealed partial class ReportJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static ReportJson Published { get; } = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
    });
}
