using System.Text.Json.Serialization;
using ProcScript.Analysis.Reports;

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
    public static ReachJson Published { get; } = new(PublishedForm.Indented());
}
