using System.Text.Json.Serialization;
using ProcScript.Analysis.Reports;

namespace ProcScript.Analysis.Plans;

/// <summary>The published form of a plan: <c>build --format json</c> writes it, its schema describes it, and templates see it.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(Plan))]
public sealed partial class PlanJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static PlanJson Published { get; } = new(PublishedForm.Indented());

    /// <summary>The same without a blank between, for what no one reads.</summary>
    internal static PlanJson Compact { get; } = new(PublishedForm.Compact());
}
