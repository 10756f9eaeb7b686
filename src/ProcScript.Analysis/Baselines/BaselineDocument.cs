using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ProcScript.Analysis.Baselines;

/// <summary>The findings that a library had when the baseline was written.</summary>
/// <param name="Format">Always <c>procscript baseline</c>.</param>
/// <param name="Version">The version of this form; it changes when a reader of the earlier one would go wrong.</param>
/// <param name="Findings">The findings in the order of files, rules and fingerprints, those of one fingerprint together.</param>
public sealed record BaselineDocument(string Format, int Version, ImmutableArray<BaselineEntry> Findings)
{
    /// <summary>What <see cref="Format"/> says.</summary>
    internal const string ThisFormat = "procscript baseline";

    /// <summary>The version that is written.</summary>
    internal const int ThisVersion = 1;
}

/// <summary>Findings of one rule on lines of one file with the same words.</summary>
/// <param name="File">The file, relative to the library root, with forward slashes.</param>
/// <param name="Rule">The code of the rule.</param>
/// <param name="Fingerprint">What the findings are known by.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Message">What the first of them said when it was written down; for people alone.</param>
public sealed record BaselineEntry(string File, string Rule, string Fingerprint, int Count, string Message);

/// <summary>The form of a baseline.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(BaselineDocument))]
public sealed partial class BaselineJson : JsonSerializerContext
{
    /// <summary>The form with every letter written as itself, an entry a line; it takes no member that it does not know.</summary>
    public static BaselineJson Published { get; } = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    });
}
