using System.Text.Json.Serialization;
using ProcScript.Jobs.Standing;

namespace ProcScript.Floor.Index;

/// <summary>How a line of the board is written into the index.</summary>
[JsonSerializable(typeof(JobLine))]
internal sealed partial class IndexJson : JsonSerializerContext;
