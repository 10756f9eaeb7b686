using System.Text.Encodings.Web;
using System.Text.Unicode;
using ProcScript.Cards.Escaping;

namespace ProcScript.Cards.Templating;

/// <summary>The form of a file that values are written into; the template's ending says which.</summary>
internal enum Notation
{
    /// <summary><c>.html</c> and <c>.svg</c>.</summary>
    Html,

    /// <summary><c>.md</c>.</summary>
    Markdown,

    /// <summary><c>.css</c>: values stand inside quoted strings.</summary>
    Css,
}

/// <summary>Escapes a plain text so that it comes out of the document as the same text.</summary>
internal static class Notations
{
    private static readonly HtmlEncoder Html = HtmlEncoder.Create(UnicodeRanges.All);

    /// <summary>The notation of a template.</summary>
    public static Notation Of(string template) => template switch
    {
        _ when template.EndsWith(".md", StringComparison.Ordinal) => Notation.Markdown,
        _ when template.EndsWith(".css", StringComparison.Ordinal) => Notation.Css,
        _ => Notation.Html,
    };

    /// <summary>Escapes <paramref name="text"/>.</summary>
    public static string Escape(this Notation notation, string text) => notation switch
    {
        Notation.Markdown => MarkdownText.Escape(text),
        Notation.Css => CssText.Escape(Originals.Without(text)),
        _ => Html.Encode(text),
    };
}
