using System.Text.RegularExpressions;

namespace ProcScript.Cli.Output;

/// <summary>
/// Build servers take lines of a log for commands: what stands in a file, or is its name, must not command them. A character without width
/// parts what they look for; in data it is written in the way of the format.
/// </summary>
internal static partial class LogCommands
{
    private const string Part = "\u200B";

    /// <summary>A line that is printed, without a command in it.</summary>
    public static string Disarm(string line)
    {
        if (line.Contains("##", StringComparison.Ordinal))
        {
            line = Marked().Replace(line, $"##{Part}${{rest}}");
        }

        return line.AsSpan().TrimStart() is [':', ':', var first, ..] && char.IsAsciiLetter(first) ? Part + line : line;
    }

    /// <summary>Lines that are printed, without a command in them, and without what a terminal would obey.</summary>
    public static string DisarmLines(string text) => string.Join('\n', text.Split('\n').Select(line => Disarm(PrintableText.Plain(line))));

    /// <summary>JSON that means the same, without a command in it: such signs stand within its texts alone.</summary>
    public static string DisarmJson(string json) => json.Replace("##", "#\\u0023", StringComparison.Ordinal);

    /// <summary>XML that means the same, without a command in it.</summary>
    public static string DisarmXml(string xml) =>
        xml.Replace("##", "#&#35;", StringComparison.Ordinal).Replace("\n::", "\n&#58;:", StringComparison.Ordinal);

    [GeneratedRegex(@"##(?<rest>\w*\[)", RegexOptions.CultureInvariant)]
    private static partial Regex Marked();
}
