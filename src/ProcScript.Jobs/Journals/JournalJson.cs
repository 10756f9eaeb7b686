using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace ProcScript.Jobs.Journals;

/// <summary>The published form of an event: a line of a journal, but for its hash, and what a schema describes.</summary>
[JsonSerializable(typeof(JobEvent))]
public sealed partial class JournalJson : JsonSerializerContext
{
    /// <summary>On one line, every letter as itself, without what is not said.</summary>
    public static JournalJson Published { get; } = new(new JsonSerializerOptions
    {
        Converters = { new JsonStringEnumConverter<EventKind>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    });
}
