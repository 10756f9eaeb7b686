using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using CsCheck;
using Markdig;
using ProcScript.Cards.Prose;

namespace ProcScript.Cards.Tests.Prose;

/// <summary>An author's Markdown keeps its words and its simple forms, and nothing that reaches outside.</summary>
public sealed partial class ProseTests
{
    private static readonly MarkdownPipeline Everything = new MarkdownPipelineBuilder().UseAdvancedExtensions().Build();

    private static readonly HashSet<string> Simple =
        new(StringComparer.Ordinal) { "p", "ul", "ol", "li", "em", "strong", "code", "pre", "blockquote", "br", "hr" };

    [Theory]
    [InlineData("a **b** *c* `d`", "<p>a <strong>b</strong> <em>c</em> <code>d</code></p>")]
    [InlineData("one\n\ntwo", "<p>one</p>\n<p>two</p>")]
    [InlineData("- a\n- b", "<ul>\n<li>a</li>\n<li>b</li>\n</ul>")]
    [InlineData("3. a\n4. b", "<ol start=\"3\">\n<li>a</li>\n<li>b</li>\n</ol>")]
    [InlineData("<b>x</b>", "<p>&lt;b&gt;x&lt;/b&gt;</p>")]
    [InlineData("# not a head", "<p># not a head</p>")]
    [InlineData("not\n===", "<p>not\n===</p>")]
    [InlineData("[words](http://e.example/x)", "<p>words (http://e.example/x)</p>")]
    [InlineData("[words](javascript:alert(1))", "<p>words (javascript:alert(1))</p>")]
    [InlineData("<http://e.example/>", "<p>http://e.example/</p>")]
    [InlineData("![the *left* hose](http://e.example/x.png)", "<p>the <em>left</em> hose</p>")]
    public void Html_has_the_simple_forms_only(string prose, string html) => Assert.Equal(html, ProseHtml.Render(prose));

    [Theory]
    [InlineData("a **b** *c* `d`", "a **b** *c* `d`")]
    [InlineData("a __b__ _c_", "a **b** *c*")]
    [InlineData("one\ntwo\n\nthree", "one\ntwo\n\nthree")]
    [InlineData("* a\n* b\n  1. c\n  2. d", "- a\n- b\n  1. c\n  2. d")]
    [InlineData("> quoted\n> on", "> quoted\n> on")]
    [InlineData("<b>x</b>", "\\<b>x\\</b>")]
    [InlineData("# not a head", "\\# not a head")]
    [InlineData("[words](http://e.example/x)", "words (http\\://e.example/x)")]
    [InlineData("    code <b>", "```\ncode <b>\n```")]
    [InlineData("hard  \nbreak", "hard\\\nbreak")]
    [InlineData("a/*\\\nb*", "a/\\\n*b*")]
    public void Markdown_has_the_same_forms_in_one_spelling(string prose, string markdown) => Assert.Equal(markdown, ProseMarkdown.Render(prose));

    [Fact]
    public void Nesting_beyond_sense_is_shown_as_written()
    {
        var prose = new string('>', 5000) + " stop";

        Assert.Contains("&gt;&gt; stop", ProseHtml.Render(prose), StringComparison.Ordinal);
        Assert.EndsWith("> stop", ProseMarkdown.Render(prose), StringComparison.Ordinal);
    }

    [Fact]
    public void Both_documents_say_the_same_words() => HostilePlan.Text.Array[1, 4].Select(lines => string.Join('\n', lines)).Sample(prose =>
    {
        // Stars that touch may pair up in another way once they are written out again; the words between them stay.
        var fromHtml = Text(ProseHtml.Render(prose)).Replace("*", "", StringComparison.Ordinal);
        var fromMarkdown = Text(Markdig.Markdown.ToHtml(ProseMarkdown.Render(prose))).Replace("*", "", StringComparison.Ordinal);

        Assert.Equal(fromHtml, fromMarkdown);
    }, iter: 600);

    [Fact]
    public void No_renderer_finds_more_in_the_markdown() => HostilePlan.Text.Array[1, 4].Select(lines => string.Join('\n', lines)).Sample(prose =>
    {
        var markdown = ProseMarkdown.Render(prose);
        var found = new HtmlParser().ParseDocument(Markdig.Markdown.ToHtml(markdown, Everything)).Body!.QuerySelectorAll("*").Select(element => element.LocalName);

        Assert.True(found.All(Simple.Contains), $"{markdown}\n{string.Join(' ', found)}");
    }, iter: 600);

    [Fact]
    public void No_prose_adds_an_element_that_reaches_outside() => HostilePlan.Text.Array[1, 4].Select(lines => string.Join('\n', lines)).Sample(prose =>
    {
        var elements = new HtmlParser().ParseDocument(ProseHtml.Render(prose)).Body!.QuerySelectorAll("*").Select(element => element.LocalName);

        Assert.Subset(Simple, elements.ToHashSet(StringComparer.Ordinal));
    }, iter: 600);

    private static string Text(string html) => Blanks().Replace(new HtmlParser().ParseDocument(html).Body!.TextContent, " ").Trim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
