using System.Text.Json.Serialization;
using ProcScript.Analysis.Reports;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// The form in which a problem goes to a scheduler in another program and its schedule comes back, and the published form of who does what.
/// </summary>
[JsonSerializable(typeof(CrewDocument))]
[JsonSerializable(typeof(CrewProblem))]
[JsonSerializable(typeof(CrewSchedule))]
public sealed partial class CrewJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static CrewJson Published { get; } = new(PublishedForm.Indented());
}
