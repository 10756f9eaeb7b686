using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using CsCheck;
using Markdig;
using ProcScript.Cards.Escaping;
using ProcScript.Cards.Templating;

namespace ProcScript.Cards.Tests.Escaping;

public sealed partial class EscapingTests
{
    private static readonly MarkdownPipeline Everything = new MarkdownPipelineBuilder().UseAdvancedExtensions().Build();

    [Theory]
    [InlineData("M8 × 25 flange bolt", "M8 × 25 flange bolt")]
    [InlineData("10.8 mm O-ring", "10.8 mm O-ring")]
    [InlineData("-5 °C", "-5 °C")]
    [InlineData("pillar_trim", "pillar_trim")]
    [InlineData("pillar_trim[left]", "pillar_trim\\[left\\]")]
    [InlineData("1. first", "1\\. first")]
    [InlineData("- item", "\\- item")]
    [InlineData("R&D", "R\\&D")]
    [InlineData("a & b", "a & b")]
    [InlineData("< 1 V", "< 1 V")]
    [InlineData("<b>", "\\<b>")]
    [InlineData(" two\r\nlines ", "two lines")]
    public void Markdown_is_escaped_where_it_must_be_and_nowhere_else(string text, string escaped) => Assert.Equal(escaped, MarkdownText.Escape(text));

    [Fact]
    public void Markdown_gives_the_text_back() => HostilePlan.Text.Sample(text =>
    {
        var html = Markdig.Markdown.ToHtml(MarkdownText.Escape(text), Everything);

        var body = new HtmlParser().ParseDocument(html).Body!;
        Assert.Equal(OneBlank(text), OneBlank(body.TextContent));
        Assert.Subset(new HashSet<string>(StringComparer.Ordinal) { "p" }, body.QuerySelectorAll("*").Select(element => element.LocalName).ToHashSet(StringComparer.Ordinal));
    }, iter: 800);

    [Fact]
    public void Html_gives_the_text_back_in_text_and_in_attributes() => Gen.OneOf(HostilePlan.Text, Gen.String[Gen.Char[' ', '\u00ff'], 0, 40]).Where(IsPlain).Sample(text =>
    {
        var escaped = Notation.Html.Escape(text);

        var paragraph = new HtmlParser().ParseDocument($"<p title=\"{escaped}\">{escaped}</p>").QuerySelector("p")!;
        Assert.Equal(text, paragraph.TextContent);
        Assert.Equal(text, paragraph.GetAttribute("title"));
        Assert.Equal(1, paragraph.Attributes.Length);
    }, iter: 600);

    [Fact]
    public void Css_gives_the_text_back() => Gen.OneOf(HostilePlan.Text, Gen.String[Gen.Char['\u0001', '\ud7ff'], 0, 40]).Sample(text =>
    {
        var escaped = CssText.Escape(text);

        Assert.Matches(@"^([A-Za-z0-9 ]|\\[0-9a-f]{1,6} )*$", escaped);
        Assert.Equal(text, CssEscape().Replace(escaped, match => new Rune(int.Parse(match.Groups[1].ValueSpan, NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString()));
    }, iter: 600);

    // An HTML parser turns the numbers of the C1 controls into other letters; no text of a plan has them.
    private static bool IsPlain(string text) => !text.Any(char.IsControl);

    private static string OneBlank(string text) => Blanks().Replace(text, " ").Trim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"\\([0-9a-f]{1,6}) ")]
    private static partial Regex CssEscape();
}
