using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schema of records, from the types that are written out and their doc comments.</summary>
internal sealed class RecordSchema
{
    private static readonly JsonSerializerOptions Written = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
        WriteIndented = true,
    };

    private readonly JsonSerializerContext _form;
    private readonly DocComments _comments;
    private readonly JsonObject _definitions = [];

    private RecordSchema(JsonSerializerContext form, DocComments comments)
    {
        _form = form;
        _comments = comments;
    }

    /// <summary>The schema of a record and of all that it holds.</summary>
    /// <param name="title">What it is the schema of.</param>
    /// <param name="root">The record.</param>
    /// <param name="form">The form in which it is written.</param>
    public static string Of(string title, Type root, JsonSerializerContext form)
    {
        RecordSchema schema = new(form, DocComments.Of(root.Assembly));
        schema.Define(schema.InfoOf(root));
        JsonObject written = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = title,
            ["$ref"] = Reference(root),
            ["$defs"] = schema._definitions,
        };
        return written.ToJsonString(Written) + "\n";
    }

    private void Define(JsonTypeInfo type)
    {
        if (_definitions.ContainsKey(type.Type.Name))
        {
            return;
        }

        // What is kept out of the form is still listed in it, without a way to read it.
        var written = type.Properties.Where(property => property.Get is not null).ToList();
        JsonObject properties = [];
        JsonObject definition = new()
        {
            ["type"] = "object",
            ["description"] = _comments.OfType(type.Type),
            ["properties"] = properties,
            ["required"] = new JsonArray([.. written.Where(IsAlwaysThere).Select(property => (JsonNode)property.Name)]),
            ["additionalProperties"] = false,
        };
        _definitions[type.Type.Name] = definition;
        foreach (var property in written)
        {
            var schema = Value(Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType);
            if (property.IsGetNullable)
            {
                schema = new JsonObject { ["anyOf"] = new JsonArray(schema, new JsonObject { ["type"] = "null" }) };
            }

            schema["description"] = _comments.OfProperty(type.Type, property);
            properties[property.Name] = schema;
        }
    }

    /// <summary>Whether a form that leaves out what says nothing writes a property all the same.</summary>
    private bool IsAlwaysThere(JsonPropertyInfo property) =>
        _form.Options.DefaultIgnoreCondition != JsonIgnoreCondition.WhenWritingNull || !(property.IsGetNullable || Nullable.GetUnderlyingType(property.PropertyType) is not null);

    private JsonObject Value(Type type)
    {
        var info = InfoOf(type);
        switch (info.Kind)
        {
            case JsonTypeInfoKind.Object:
                Define(info);
                return new JsonObject { ["$ref"] = Reference(type) };
            case JsonTypeInfoKind.Enumerable:
                return new JsonObject { ["type"] = "array", ["items"] = Value(info.ElementType!) };
            case var _ when type.IsEnum:
                return new JsonObject { ["type"] = "string", ["enum"] = new JsonArray([.. Enum.GetNames(type).Select(name => (JsonNode)JsonNamingPolicy.KebabCaseLower.ConvertName(name))]) };
            default:
                return new JsonObject { ["type"] = Simple(type) };
        }
    }

    private JsonTypeInfo InfoOf(Type type) => _form.GetTypeInfo(type) ?? throw new GenerationException($"The JSON form does not know {type}.");

    private static string Reference(Type type) => $"#/$defs/{type.Name}";

    private static string Simple(Type type) => type switch
    {
        _ when type == typeof(string) => "string",
        _ when type == typeof(int) => "integer",
        _ when type == typeof(double) => "number",
        _ when type == typeof(bool) => "boolean",
        // Points in time are texts, as RFC 3339 has them.
        _ when type == typeof(DateTimeOffset) => "string",
        _ => throw new GenerationException($"A schema has no word for {type}."),
    };
}
