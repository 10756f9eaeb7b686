using System.Text;

namespace ProcScript.Cli.Manual;

/// <summary>Writes a manual page in the macros that every <c>man</c> knows.</summary>
internal sealed class Troff
{
    private readonly StringBuilder _page = new();

    /// <summary>The head of the page.</summary>
    public Troff Title(string name, int section, string source, string manual) =>
        Line($".TH {name.ToUpperInvariant()} {section} \"\" {Quoted(source)} {Quoted(manual)}");

    /// <summary>A section.</summary>
    public Troff Section(string name) => Line($".SH {Quoted(name)}");

    /// <summary>A part of a section.</summary>
    public Troff Subsection(string name) => Line($".SS {Quoted(name)}");

    /// <summary>A paragraph; empty lines in it begin a new one.</summary>
    public Troff Paragraph(string text) => Line(".PP").Text(text);

    /// <summary>A term in bold, and what it means.</summary>
    public Troff Item(string term, string meaning) => Line(".TP").Line($"\\fB{Escaped(term)}\\fP").Text(meaning);

    /// <summary>A line to be typed, and what it does.</summary>
    public Troff Example(string line, string meaning) => Paragraph(meaning).Line(".RS 4").Lines([line]).Line(".RE");

    /// <summary>Text that does not flow, line by line.</summary>
    public Troff Lines(IEnumerable<string> lines) => Line(".nf").Line(string.Join('\n', lines.Select(line => Guarded(Escaped(line))))).Line(".fi");

    /// <summary>Text that flows.</summary>
    public Troff Text(string text)
    {
        foreach (var line in text.Split('\n'))
        {
            Line(Guarded(Escaped(line.Trim())));
        }

        return this;
    }

    /// <inheritdoc/>
    public override string ToString() => _page.ToString();

    private Troff Line(string line)
    {
        _page.Append(line).Append('\n');
        return this;
    }

    private static string Quoted(string text) => $"\"{Escaped(text).Replace("\"", "\\(dq", StringComparison.Ordinal)}\"";

    private static string Escaped(string text) => text
        .Replace("\\", "\\e", StringComparison.Ordinal)
        .Replace("-", "\\-", StringComparison.Ordinal)
        .Replace("~", "\\(ti", StringComparison.Ordinal)
        .Replace("^", "\\(ha", StringComparison.Ordinal)
        .Replace("'", "\\(aq", StringComparison.Ordinal);

    /// <summary>A line that begins like a request of the typesetter is none.</summary>
    private static string Guarded(string line) => line.StartsWith('.') ? $"\\&{line}" : line;
}
