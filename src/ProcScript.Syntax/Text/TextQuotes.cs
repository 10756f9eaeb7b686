namespace ProcScript.Syntax.Text;

/// <summary>Writes texts as sources have them.</summary>
public static class TextQuotes
{
    /// <summary>A text for between quotes.</summary>
    public static string Escaped(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text
            .Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("\"", "\\\"", StringComparison.Ordinal)
            .Replace("\n", "\\n", StringComparison.Ordinal);
    }

    /// <summary>A text in its quotes.</summary>
    public static string Quoted(string text) => $"\"{Escaped(text)}\"";
}
