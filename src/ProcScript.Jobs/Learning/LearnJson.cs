using System.Text.Json.Serialization;
using ProcScript.Analysis.Reports;

namespace ProcScript.Jobs.Learning;

/// <summary>The published form of what jobs teach: <c>learn --format json</c> writes it, and a schema describes it.</summary>
[JsonSerializable(typeof(LearnDocument))]
public sealed partial class LearnJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static LearnJson Published { get; } = new(PublishedForm.Indented());
}
