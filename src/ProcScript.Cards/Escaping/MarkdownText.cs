using System.Text;

namespace ProcScript.Cards.Escaping;

/// <summary>
/// Plain text inside Markdown. A backslash goes before whatever CommonMark, its tables or its usual renderers would take for
/// markup, and nowhere else: the file is also read as it stands.
/// </summary>
internal static class MarkdownText
{
    private const string AlwaysMarkup = "\\`*[]|~^$@";

    /// <summary>Escapes a text that stands on one line: line breaks become blanks.</summary>
    public static string Escape(string text) => Escape(OnOneLine(text), startsLine: true);

    /// <summary>Escapes a text in the middle of a line, where nothing in it can start a block.</summary>
    public static string EscapeWithin(string text) => Escape(OnOneLine(text), startsLine: false);

    private static string Escape(string line, bool startsLine)
    {
        StringBuilder escaped = new(line.Length);
        for (var i = 0; i < line.Length; i++)
        {
            if (IsMarkup(line, i) || (startsLine && StartsBlock(line, i)))
            {
                escaped.Append('\\');
            }

            escaped.Append(line[i]);
        }

        return escaped.ToString();
    }

    private static string OnOneLine(string text) =>
        string.Join(' ', text.Split((char[])['\r', '\n', '\t', '\u2028', '\u2029', '\u0085'], StringSplitOptions.RemoveEmptyEntries)).Trim();

    private static bool IsMarkup(string line, int at) => line[at] switch
    {
        var c when AlwaysMarkup.Contains(c) => true,
        // snake_case inside a word is not emphasis.
        '_' => !(IsWord(line, at - 1) && IsWord(line, at + 1)),
        '<' => at == line.Length - 1 || IsWord(line, at + 1) || line[at + 1] is '/' or '!' or '?',
        '&' => IsWord(line, at + 1) || Is(line, at + 1, '#'),
        '=' => Is(line, at + 1, '=') || Is(line, at - 1, '='),
        // Bare addresses become links in many renderers.
        ':' => Is(line, at + 1, '/') && Is(line, at + 2, '/'),
        '.' => IsAfterWww(line, at),
        _ => false,
    };

    private static bool StartsBlock(string line, int at) => line[at] switch
    {
        '#' or '>' or '=' => at == 0,
        '-' or '+' => at == 0 && (EndsMark(line, at + 1) || Is(line, at + 1, '-')),
        '.' or ')' => IsAfterFirstNumber(line, at) && EndsMark(line, at + 1),
        _ => false,
    };

    private static bool EndsMark(string line, int at) => at == line.Length || line[at] == ' ';

    private static bool Is(string line, int at, char c) => at >= 0 && at < line.Length && line[at] == c;

    private static bool IsWord(string line, int at) => at >= 0 && at < line.Length && char.IsLetterOrDigit(line[at]);

    private static bool IsAfterFirstNumber(string line, int at) => at is > 0 and < 10 && !line.AsSpan(0, at).ContainsAnyExceptInRange('0', '9');

    private static bool IsAfterWww(string line, int at) => at >= 3 && line.AsSpan(at - 3, 3).Equals("www", StringComparison.OrdinalIgnoreCase);
}
