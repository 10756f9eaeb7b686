using System.Collections.Immutable;
using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using ProcScript.LanguageServer.Protocol;

namespace ProcScript.LanguageServer.Tests.Protocol;

/// <summary>The server's messages as types of TypeScript: what it can read, or what it may write.</summary>
/// <param name="written">Whether as it writes them.</param>
internal sealed class TypeScriptTypes(bool written)
{
    private readonly JsonSerializerOptions _options = ProtocolJson.ForConnection();
    private readonly HashSet<Type> _declared = [];
    private readonly StringBuilder _declarations = new();

    /// <summary>The declarations of the types that were named.</summary>
    public string Declarations => _declarations.ToString();

    /// <summary>The name of a type as the source says it: <c>ImmutableArray&lt;Location&gt;</c>, <c>Hover?</c>.</summary>
    public string Of(string source)
    {
        if (source.EndsWith('?'))
        {
            return $"{Of(source[..^1])} | null";
        }

        const string array = "ImmutableArray<";
        return source.StartsWith(array, StringComparison.Ordinal)
            ? $"({Of(source[array.Length..^1])})[]"
            : Of(typeof(ProtocolJson).Assembly.GetType($"ProcScript.LanguageServer.Protocol.{source}", throwOnError: true)!);
    }

    private string Of(Type type)
    {
        if (Nullable.GetUnderlyingType(type) is { } value)
        {
            return Of(value);
        }

        var info = _options.GetTypeInfo(type);
        return info.Kind switch
        {
            JsonTypeInfoKind.Enumerable => $"({Of(info.ElementType!)})[]",
            JsonTypeInfoKind.Dictionary => $"{{ [key: string]: {Of(info.ElementType!)} }}",
            JsonTypeInfoKind.Object => Declare(type, info),
            _ when type == typeof(string) => "string",
            _ when type == typeof(bool) => "boolean",
            _ when type == typeof(int) || type == typeof(double) => "number",
            _ => "any",
        };
    }

    private string Declare(Type type, JsonTypeInfo info)
    {
        var name = $"{(written ? "Written" : "Read")}_{type.Name}";
        if (_declared.Add(type))
        {
            var properties = info.Properties.Where(property => property.Name != "equalityContract").Select(property => Property(type, property)).ToImmutableArray();
            _declarations.Append("type ").Append(name).Append(" = { ").AppendJoin("; ", properties).Append(" };\n");
        }

        return name;
    }

    private string Property(Type type, JsonPropertyInfo property)
    {
        var clr = type.GetProperties().Single(one => string.Equals(NameOf(one), property.Name, StringComparison.Ordinal));
        var nullability = new NullabilityInfoContext().Create(clr);
        var mayBeNull = nullability.ReadState == NullabilityState.Nullable;
        var named = Of(property.PropertyType);
        if (!written)
        {
            return mayBeNull || !property.IsRequired && !IsParameter(type, clr) ? $"{property.Name}?: {named} | null" : $"{property.Name}: {named}";
        }

        var isAlwaysWritten = clr.GetCustomAttribute<JsonIgnoreAttribute>()?.Condition == JsonIgnoreCondition.Never;
        return !mayBeNull ? $"{property.Name}: {named}" : isAlwaysWritten ? $"{property.Name}: {named} | null" : $"{property.Name}?: {named}";
    }

    private static string NameOf(PropertyInfo property) =>
        property.GetCustomAttribute<JsonPropertyNameAttribute>()?.Name ?? JsonNamingPolicy.CamelCase.ConvertName(property.Name);

    /// <summary>What the constructor takes has to be there.</summary>
    private static bool IsParameter(Type type, PropertyInfo property) =>
        type.GetConstructors().SelectMany(constructor => constructor.GetParameters()).Any(parameter => parameter.Name == property.Name);
}
