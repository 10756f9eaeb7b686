using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using ProcScript.Analysis.Plans;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schema of a plan, from the types that are written out and their doc comments.</summary>
internal sealed class PlanSchemaGenerator : IGenerator
{
    private static readonly JsonSerializerOptions Written = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
        WriteIndented = true,
    };

    public string Name => "plan-schema";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root)
    {
        var comments = DocComments.Of(typeof(Plan).Assembly);
        JsonObject definitions = [];
        Define(PlanJson.Published.Plan, comments, definitions);
        JsonObject schema = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "The plan of a proven procedure",
            ["$ref"] = Reference(typeof(Plan)),
            ["$defs"] = definitions,
        };
        return [new GeneratedFile("src/ProcScript.Cards/plan.schema.json", schema.ToJsonString(Written) + "\n")];
    }

    private static void Define(JsonTypeInfo type, DocComments comments, JsonObject definitions)
    {
        if (definitions.ContainsKey(type.Type.Name))
        {
            return;
        }

        JsonObject properties = [];
        JsonObject definition = new()
        {
            ["type"] = "object",
            ["description"] = comments.OfType(type.Type),
            ["properties"] = properties,
            ["required"] = new JsonArray([.. type.Properties.Select(property => (JsonNode)property.Name)]),
            ["additionalProperties"] = false,
        };
        definitions[type.Type.Name] = definition;
        foreach (var property in type.Properties)
        {
            var schema = Value(Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType, comments, definitions);
            if (property.IsGetNullable)
            {
                schema = new JsonObject { ["anyOf"] = new JsonArray(schema, new JsonObject { ["type"] = "null" }) };
            }

            schema["description"] = comments.OfProperty(type.Type, property);
            properties[property.Name] = schema;
        }
    }

    private static JsonObject Value(Type type, DocComments comments, JsonObject definitions)
    {
        var info = PlanJson.Published.GetTypeInfo(type) ?? throw new GenerationException($"The JSON form of a plan does not know {type}.");
        switch (info.Kind)
        {
            case JsonTypeInfoKind.Object:
                Define(info, comments, definitions);
                return new JsonObject { ["$ref"] = Reference(type) };
            case JsonTypeInfoKind.Enumerable:
                return new JsonObject { ["type"] = "array", ["items"] = Value(info.ElementType!, comments, definitions) };
            default:
                return new JsonObject { ["type"] = Simple(type) };
        }
    }

    private static string Reference(Type type) => $"#/$defs/{type.Name}";

    private static string Simple(Type type) => type switch
    {
        _ when type == typeof(string) => "string",
        _ when type == typeof(int) => "integer",
        _ when type == typeof(double) => "number",
        _ when type == typeof(bool) => "boolean",
        _ => throw new GenerationException($"The plan's schema has no word for {type}."),
    };
}
