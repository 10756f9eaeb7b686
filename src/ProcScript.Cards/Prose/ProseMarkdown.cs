using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Markdig.Helpers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using ProcScript.Cards.Escaping;

namespace ProcScript.Cards.Prose;

/// <summary>An author's prose written out again as plain CommonMark that no renderer takes for HTML, a link or an image.</summary>
internal static partial class ProseMarkdown
{
    private const string HardBreak = "\\\n";

    /// <summary>Renders prose as blocks.</summary>
    public static string Render(string prose) => Blocks(ProseDocument.Parse(prose));

    /// <summary>Whether rendered prose begins with a list, a quote, code or a rule; a paragraph that looks like one is escaped.</summary>
    public static bool BeginsBlock(string rendered) => BlockMark().IsMatch(rendered);

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
        var pending = "";
        foreach (var inline in container)
        {
            if (inline is LineBreakInline end)
            {
                // A break is written with what follows it: at the end of a paragraph its backslash would be a letter.
                pending = text.Length == 0 ? "" : end.IsHard || pending == HardBreak ? HardBreak : "\n";
                continue;
            }

            var piece = Inline(inline, atLineStart: pending.Length > 0 || StartsLine(text));
            if (piece.Length > 0)
            {
                text.Append(pending).Append(piece);
                pending = "";
            }
        }

        return text.ToString();
    }

    private static bool StartsLine(StringBuilder text)
    {
        var at = text.Length - 1;
        while (at >= 0 && text[at] == ' ')
        {
            at--;
        }

        return at < 0 || text[at] == '\n';
    }

    private static string Inline(Inline inline, bool atLineStart) => inline switch
    {
        LiteralInline literal => Literal(literal.Content, atLineStart),
        EmphasisInline emphasis => Emphasis(emphasis),
        CodeInline code => InlineCode(code.Content),
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
            return text.Length == 0 || atLineStart ? "" : " ";
        }

        // In the middle of a line nothing but the marks within it can be taken for markup.
        var escaped = atLineStart ? MarkdownText.Escape(trimmed) : MarkdownText.EscapeWithin(trimmed);
        return (!atLineStart && char.IsWhiteSpace(text[0]) ? " " : "") + escaped + (char.IsWhiteSpace(text[^1]) ? " " : "");
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

    [GeneratedRegex(@"^(```|- |> |\* \* \*|[0-9]+\. )", RegexOptions.CultureInvariant)]
    private static partial Regex BlockMark();

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
