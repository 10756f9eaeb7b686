using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace ProcScript.Analysis.Reports;

/// <summary>How documents for other programs are written.</summary>
public static class PublishedForm
{
    /// <summary>Indented, with every letter written as itself. Each form takes options of its own.</summary>
    public static JsonSerializerOptions Indented() => Of(isIndented: true);

    /// <summary>The same on one line.</summary>
    public static JsonSerializerOptions Compact() => Of(isIndented: false);

    private static JsonSerializerOptions Of(bool isIndented) => new()
    {
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = isIndented,
    };
}
