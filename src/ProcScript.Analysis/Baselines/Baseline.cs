using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Baselines;

/// <summary>
/// The findings that a library had at some time, so that a check speaks of new ones only. It shrinks with the library: what is in it and
/// is no longer found is a finding.
/// </summary>
/// <param name="Text">The file.</param>
/// <param name="Entries">The findings.</param>
public sealed record Baseline(SourceText Text, ImmutableArray<BaselineEntry> Entries)
{
    /// <summary>Reads a baseline.</summary>
    /// <param name="text">The file; its path is relative to the library root.</param>
    /// <exception cref="BaselineException">It is no baseline.</exception>
    public static Baseline Read(SourceText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        BaselineDocument? document;
        try
        {
            document = JsonSerializer.Deserialize(text.Content, BaselineJson.Published.BaselineDocument);
        }
        catch (JsonException fault)
        {
            throw new BaselineException(Place(fault) + Reason(fault), fault);
        }

        return document switch
        {
            { Format: not BaselineDocument.ThisFormat } or null => throw new BaselineException("its format is not said to be \"" + BaselineDocument.ThisFormat + "\""),
            { Version: > BaselineDocument.ThisVersion } => throw new BaselineException("a newer version of procscript wrote it"),
            { Findings.IsDefault: true } => throw new BaselineException("it lists no findings"),
            _ when document.Findings.Contains(null!) => throw new BaselineException("one of its findings is null"),
            _ when document.Findings.FirstOrDefault(entry => entry.Count <= 0) is { } entry =>
                throw new BaselineException($"the count of {entry.Fingerprint} is {entry.Count}"),
            _ => new Baseline(text, document.Findings),
        };
    }

    /// <summary>Writes a baseline: sorted, an entry a line, so that a change of one finding is a change of one line.</summary>
    public static string Write(IEnumerable<BaselineEntry> entries)
    {
        var text = new StringBuilder($"{{\n  \"format\": \"{BaselineDocument.ThisFormat}\",\n  \"version\": {BaselineDocument.ThisVersion},\n  \"findings\": [");
        var separator = "\n    ";
        foreach (var entry in Sort(entries))
        {
            text.Append(separator).Append(JsonSerializer.Serialize(entry, BaselineJson.Published.BaselineEntry));
            separator = ",\n    ";
        }

        return text.Append(separator[0] == ',' ? "\n  ]\n}\n" : "]\n}\n").ToString();
    }

    private static IOrderedEnumerable<BaselineEntry> Sort(IEnumerable<BaselineEntry> entries) => entries
        .OrderBy(entry => entry.File, StringComparer.Ordinal)
        .ThenBy(entry => entry.Rule, StringComparer.Ordinal)
        .ThenBy(entry => entry.Fingerprint, StringComparer.Ordinal);

    private static string Place(JsonException fault) => fault.LineNumber is { } line ? $"line {line + 1}: " : "";

    /// <summary>The reader's own words, without the names of our types and the place that it adds.</summary>
    private static string Reason(JsonException fault)
    {
        var words = fault.Message;
        if (words.Contains(typeof(Baseline).Namespace!, StringComparison.Ordinal))
        {
            return "it lacks something that a baseline has, or has something that a baseline lacks";
        }

        var end = words.IndexOf(" Path: ", StringComparison.Ordinal);
        return end < 0 ? words : words[..end].TrimEnd('.');
    }
}

/// <summary>A file is no baseline.</summary>
public sealed class BaselineException : Exception
{
    /// <summary>Says why.</summary>
    public BaselineException(string message)
        : base(message)
    {
    }

    /// <summary>Says why, and what led to it.</summary>
    public BaselineException(string message, Exception cause)
        : base(message, cause)
    {
    }
}
