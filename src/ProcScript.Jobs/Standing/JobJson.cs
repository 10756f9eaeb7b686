using System.Text.Json.Serialization;
using ProcScript.Analysis.Reports;

namespace ProcScript.Jobs.Standing;

/// <summary>The published form of how a job stands: <c>job status --format json</c> writes it, and a schema describes it.</summary>
[JsonSerializable(typeof(JobStatus))]
public sealed partial class JobJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static JobJson Published { get; } = new(PublishedForm.Indented());
}
