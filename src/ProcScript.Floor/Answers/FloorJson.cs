using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Logs;
using ProcScript.Jobs.Journals;

namespace ProcScript.Floor.Answers;

/// <summary>What goes between server and page.</summary>
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(Refusal))]
[JsonSerializable(typeof(JobPage))]
[JsonSerializable(typeof(JobNow))]
[JsonSerializable(typeof(Board))]
[JsonSerializable(typeof(ToldEvents))]
[JsonSerializable(typeof(EventAnswers))]
[JsonSerializable(typeof(JournalPart))]
[JsonSerializable(typeof(PairRequest))]
[JsonSerializable(typeof(RefitRequest))]
[JsonSerializable(typeof(Me))]
[JsonSerializable(typeof(KeptPhoto))]
[JsonSerializable(typeof(KeptPhotos))]
[JsonSerializable(typeof(JobChange))]
internal sealed partial class FloorJson : JsonSerializerContext
{
    /// <summary>On one line, every letter as itself, without what is not said; what it does not know, it does not take.</summary>
    public static FloorJson Published { get; } = new(new JsonSerializerOptions
    {
        Converters = { new JsonStringEnumConverter<EventKind>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectRequiredConstructorParameters = true,
        MaxDepth = 16,
    });
}
