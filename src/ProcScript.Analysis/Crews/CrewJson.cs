using System.Text.Json.Serialization;

namespace ProcScript.Analysis.Crews;

/// <summary>The form in which a problem goes to a scheduler in another program, and its schedule comes back.</summary>
[JsonSerializable(typeof(CrewProblem))]
[JsonSerializable(typeof(CrewSchedule))]
public sealed partial class CrewJson : JsonSerializerContext
{
}
