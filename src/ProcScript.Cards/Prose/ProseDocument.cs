using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace ProcScript.Cards.Prose;

/// <summary>
/// Reads an author's Markdown. Raw HTML and headings stay text (the card has headings of its own); a link becomes its words
/// and address, an image its description, so that a pack never asks for anything outside itself.
/// </summary>
internal static class ProseDocument
{
    /// <summary>How prose is read and written; also for the renderers.</summary>
    public static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().DisableHtml().DisableHeadings().Build();

    /// <summary>Parses prose.</summary>
    public static MarkdownDocument Parse(string prose)
    {
        var document = ParseMarkup(prose);
        foreach (var link in document.Descendants<LinkInline>().ToList())
        {
            Flatten(link);
        }

        foreach (var link in document.Descendants<AutolinkInline>().ToList())
        {
            link.ReplaceBy(new LiteralInline(link.Url));
        }

        foreach (var emphasis in document.Descendants<EmphasisInline>().Reverse().ToList())
        {
            MoveBreaksOut(emphasis);
        }

        return document;
    }

    private static MarkdownDocument ParseMarkup(string prose)
    {
        try
        {
            return Markdig.Markdown.Parse(prose, Pipeline);
        }
        catch (ArgumentException)
        {
            // The library gives up on quotes or brackets nested beyond sense: such a text is shown as it was written.
            ContainerInline line = new();
            line.AppendChild(new LiteralInline(prose));
            return [new ParagraphBlock { Inline = line }];
        }
    }

    /// <summary>A mark of emphasis beside a line break counts as one or as a letter by what else is near it; without the break it is one everywhere.</summary>
    private static void MoveBreaksOut(EmphasisInline emphasis)
    {
        while (emphasis.FirstChild is LineBreakInline first)
        {
            first.Remove();
            emphasis.InsertBefore(first);
        }

        while (emphasis.LastChild is LineBreakInline last)
        {
            last.Remove();
            emphasis.InsertAfter(last);
        }

        if (emphasis.FirstChild is null)
        {
            emphasis.Remove();
        }
    }

    private static void Flatten(LinkInline link)
    {
        ContainerInline words = new();
        link.TransferChildrenTo(words);
        if (!link.IsImage && !string.IsNullOrEmpty(link.Url))
        {
            words.AppendChild(new LiteralInline(words.FirstChild is null ? link.Url : $" ({link.Url})"));
        }

        link.ReplaceBy(words, copyChildren: false);
    }
}
