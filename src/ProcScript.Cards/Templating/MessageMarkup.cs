using System.Globalization;
using System.Text;
using ProcScript.Analysis.Messages;

namespace ProcScript.Cards.Templating;

/// <summary>Messages as a file of some form has them.</summary>
internal static class MessageMarkup
{
    /// <summary>A message, its words and values escaped; a value that is markup already stands as it is.</summary>
    public static string Of(Wordbook book, string key, Notation notation, IReadOnlyDictionary<string, object> values)
    {
        var output = new Output(notation);
        book.Message(key).Write(book.Language, values, output);
        return output.ToString();
    }

    /// <summary>The number of a page and of all pages, as the value of <c>content</c> in a style sheet.</summary>
    public static string PageNumber(Wordbook book)
    {
        var output = new PageOutput();
        book.Message("page.number").Write(book.Language, new Dictionary<string, object> { ["page"] = "counter(page)", ["pages"] = "counter(pages)" }, output);
        return output.ToString();
    }

    private sealed class Output(Notation notation) : IMessageOutput
    {
        private readonly StringBuilder _text = new();

        // Our own words hold nothing that Markdown takes for markup, and their blanks count.
        public void Literal(string text) => _text.Append(notation == Notation.Markdown ? text : notation.Escape(text));

        public void Argument(object value) => _text.Append(value is Markup markup
            ? markup.Text
            : notation.Escape(Convert.ToString(value, CultureInfo.InvariantCulture) ?? ""));

        public void Bold(bool begins) => _text.Append(notation switch
        {
            Notation.Html => begins ? "<b>" : "</b>",
            Notation.Markdown => "**",
            _ => "",
        });

        public override string ToString() => _text.ToString();
    }

    private sealed class PageOutput : IMessageOutput
    {
        private readonly List<string> _parts = [];

        public void Literal(string text) => _parts.Add($"\"{Notation.Css.Escape(text)}\"");

        public void Argument(object value) => _parts.Add((string)value);

        public void Bold(bool begins)
        {
        }

        public override string ToString() => string.Join(' ', _parts);
    }
}
