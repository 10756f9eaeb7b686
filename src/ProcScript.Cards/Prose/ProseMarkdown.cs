using System.Globalization;
using System.Text;
using Markdig.Helpers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using ProcScript.Cards.Escaping;

namespace ProcScript.Cards.Prose;

/// <summary>An author's prose written out again as plain CommonMark that no renderer takes for HTML, a link or an image.</summary>
internal static class ProseMarkdown
{
    /// <summary>Renders prose as blocks.</summary>
    public static string Render(string prose) => Blocks(ProseDocument.Parse(prose));

    private static string Blocks(ContainerBlock container) =>
        string.Join(container is ListItemBlock { Parent: ListBlock { IsLoose: false } } ? "\n" : "\n\n", container.Select(Block).Where(text => text.Length > 0));

    private static string Block(Block block) => block switch
    {
        ListBlock list => List(list),
        QuoteBlock quote => Prefixed("> ", "> ", Blocks(quote)),
        CodeBlock code => Code(code),
        ThematicBreakBlock => "* * *",
        LeafBlock { Inline: { } inline } => Inlines(inline),
        ContainerBlock container => Blocks(container),
        _ => "",
    };

    private static string List(ListBlock list)
    {
        var number = int.TryParse(list.OrderedStart, CultureInfo.InvariantCulture, out var start) ? start : 1;
        List<string> items = [];
        foreach (var item in list.OfType<ListItemBlock>())
        {
            var mark = list.IsOrdered ? string.Create(CultureInfo.InvariantCulture, $"{number++}. ") : "- ";
            items.Add(Prefixed(mark, new string(' ', mark.Length), Blocks(item)));
        }

        return string.Join(list.IsLoose ? "\n\n" : "\n", items);
    }

    private static string Code(CodeBlock code)
    {
        var text = code.Lines.ToString();
        var fence = new string('`', Math.Max(3, LongestRun(text, '`') + 1));
        return $"{fence}\n{text}\n{fence}";
    }

    private static string Prefixed(string first, string rest, string text) =>
        string.Join('\n', text.Split('\n').Select((line, at) => at == 0 ? first + line : line.Length == 0 ? rest.TrimEnd() : rest + line));

    private static string Inlines(ContainerInline container)
    {
        StringBuilder text = new();
        foreach (var inline in container)
        {
            text.Append(Inline(inline, atLineStart: text.Length == 0 || text[^1] == '\n'));
        }

        return text.ToString();
    }

    private static string Inline(Inline inline, bool atLineStart) => inline switch
    {
        LiteralInline literal => Literal(literal.Content, atLineStart),
        EmphasisInline emphasis => Emphasis(emphasis),
        CodeInline code => InlineCode(code.Content),
        LineBreakInline { IsHard: true } => "\\\n",
        LineBreakInline => "\n",
        HtmlEntityInline entity => Literal(entity.Transcoded, atLineStart),
        ContainerInline nested => Inlines(nested),
        _ => "",
    };

    private static string Literal(StringSlice content, bool atLineStart)
    {
        var text = content.ToString();
        var trimmed = text.Trim();
        if (trimmed.Length == 0)
        {
            return text.Length == 0 ? "" : " ";
        }

        // In the middle of a line nothing but the marks within it can be taken for markup.
        var escaped = atLineStart ? MarkdownText.Escape(trimmed) : MarkdownText.EscapeWithin(trimmed);
        return (char.IsWhiteSpace(text[0]) ? " " : "") + escaped + (char.IsWhiteSpace(text[^1]) ? " " : "");
    }

    private static string Emphasis(EmphasisInline emphasis)
    {
        var mark = new string('*', emphasis.DelimiterCount);
        return mark + Inlines(emphasis) + mark;
    }

    private static string InlineCode(string content)
    {
        var ticks = new string('`', LongestRun(content, '`') + 1);
        var pad = content.StartsWith('`') || content.EndsWith('`') ? " " : "";
        return ticks + pad + content + pad + ticks;
    }

    private static int LongestRun(string text, char c)
    {
        var (longest, run) = (0, 0);
        foreach (var each in text)
        {
            run = each == c ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
