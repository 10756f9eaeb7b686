using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ProcScript.Analysis.Plans;

/// <summary>A picture at a step. The picture itself stands in the HTML pack, and beside the Markdown one.</summary>
/// <param name="File">The file, relative to the library root.</param>
/// <param name="Caption">What it shows.</param>
public sealed record PlanFigure(string File, string Caption)
{
    /// <summary>Its media type, such as <c>image/svg+xml</c>; empty where the file could not be taken.</summary>
    public string Type { get; init; } = "";

    /// <summary>SHA-256, in hexadecimal digits, of the picture as the pack shows it: made safe and without notes of the camera; empty where the file could not be taken.</summary>
    public string Hash { get; init; } = "";

    /// <summary>How wide it is, in pixels; 0 where the file could not be taken.</summary>
    public int Width { get; init; }

    /// <summary>How high it is, in pixels; 0 where the file could not be taken.</summary>
    public int Height { get; init; }

    /// <summary>The picture, made safe; empty where the file could not be taken. Data that are written down do without it.</summary>
    [JsonIgnore]
    public ImmutableArray<byte> Content { get; init; } = [];
}
