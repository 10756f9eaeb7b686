using System.Text.Json.Serialization;
using ProcScript.Analysis.Reports;

namespace ProcScript.Analysis.Comparing;

/// <summary>The published form of a change: <c>diff --format json</c> writes it, and its schema describes it.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(LibraryChange))]
public sealed partial class ChangeJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static ChangeJson Published { get; } = new(PublishedForm.Indented());
}
