using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace ProcScript.Analysis.Plans;

/// <summary>The published form of a plan: <c>build --format json</c> writes it, its schema describes it, and templates see it.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(Plan))]
public sealed partial class PlanJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static PlanJson Published { get; } = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
    });
}
