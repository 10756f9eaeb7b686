using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace ProcScript.Analysis.Reaching;

/// <summary>The published form of the planner's answers: <c>reach --format json</c> and its like write it, and schemas describe it.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ReachReport))]
[JsonSerializable(typeof(BackReport))]
[JsonSerializable(typeof(TogetherReport))]
[JsonSerializable(typeof(WhyReport))]
public sealed partial class ReachJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static ReachJson Published { get; } = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
    });
}
