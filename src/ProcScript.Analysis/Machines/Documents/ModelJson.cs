using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ProcScript.Analysis.Machines.Documents;

/// <summary>The published form of machines as data; its schema describes it.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ModelDocument))]
public sealed partial class ModelJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself.</summary>
    public static ModelJson Published { get; } = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
    });
}
