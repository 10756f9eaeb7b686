using System.Text;
using System.Text.RegularExpressions;
using ProcScript.Model.Texts;

namespace ProcScript.Cards.Templating;

/// <summary>
/// What an author wrote and nobody translated, as a finished document shows it: its language is said to the browser and the screen reader, and
/// it is marked for the eye.
/// </summary>
internal static partial class Originals
{
    private const char Start = LibraryTexts.OriginalStart;
    private const char End = LibraryTexts.OriginalEnd;

    /// <summary>Elements in which no other element can stand.</summary>
    private static readonly string[] Bare = ["script", "style", "title", "textarea", "svg"];

    /// <summary>The same without marks.</summary>
    public static string Without(string text) => text.Replace(Start.ToString(), "", StringComparison.Ordinal).Replace(End.ToString(), "", StringComparison.Ordinal);

    /// <summary>The marks in Markdown: the language behind the text, in brackets.</summary>
    public static string InMarkdown(string document, string language) =>
        document.Contains(Start, StringComparison.Ordinal) ? Without(document.Replace(End.ToString(), $" ({language})", StringComparison.Ordinal)) : document;

    /// <summary>The marks in HTML. Within a tag, and where no element can stand, there are none; none goes over the edge of a block.</summary>
    public static string InHtml(string document, string language)
    {
        if (!document.Contains(Start, StringComparison.Ordinal))
        {
            return document;
        }

        var (opening, closing) = ($"<span lang=\"{language}\" class=\"original\">", "</span>");
        var written = new StringBuilder(document.Length);
        var (isOpen, bare) = (false, "");
        var at = 0;
        foreach (var mark in Marks().EnumerateMatches(document))
        {
            written.Append(document, at, mark.Index - at);
            at = mark.Index + mark.Length;
            var text = document.Substring(mark.Index, mark.Length);
            if (text[0] != '<')
            {
                if (bare.Length == 0)
                {
                    written.Append(text[0] == Start ? opening : isOpen ? closing : "");
                    isOpen = text[0] == Start;
                }

                continue;
            }

            // A text that was cut short, or goes over several blocks, has no end of its own there.
            var isBlock = !Inline().IsMatch(text);
            if (isOpen && isBlock)
            {
                written.Append(closing);
            }

            written.Append(Without(text));
            bare = bare.Length == 0 ? Bare.FirstOrDefault(name => text.StartsWith("<" + name, StringComparison.Ordinal), "")
                : text.StartsWith("</" + bare, StringComparison.Ordinal) ? "" : bare;
            if (isOpen && isBlock)
            {
                isOpen = false;
            }
        }

        return written.Append(document, at, document.Length - at).ToString();
    }

    [GeneratedRegex("[\u2068\u2069]|<[^>]*>", RegexOptions.CultureInvariant)]
    private static partial Regex Marks();

    [GeneratedRegex("^</?(b|strong|em|i|code|a|br)\\b", RegexOptions.CultureInvariant)]
    private static partial Regex Inline();
}
