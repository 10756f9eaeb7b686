using ProcScript.Cards.Templating;

namespace ProcScript.Cards.Tests.Templates;

public sealed class OriginalsTests
{
    [Theory]
    [InlineData("<p>Los: ⁨lid⁩.</p>", "<p>Los: <span lang=\"en\" class=\"original\">lid</span>.</p>")]
    [InlineData("<p title=\"⁨lid⁩\">x</p>", "<p title=\"lid\">x</p>")]
    [InlineData("<title>⁨lid⁩</title><svg><text>⁨lid⁩</text></svg><p>⁨lid⁩</p>", "<title>lid</title><svg><text>lid</text></svg><p><span lang=\"en\" class=\"original\">lid</span></p>")]
    [InlineData("<p>⁨a <b>b</b> c⁩</p>", "<p><span lang=\"en\" class=\"original\">a <b>b</b> c</span></p>")]
    [InlineData("<p>⁨cut sh</p><p>on⁩</p>", "<p><span lang=\"en\" class=\"original\">cut sh</span></p><p>on</p>")]
    [InlineData("<p>lid</p>", "<p>lid</p>")]
    public void What_is_not_translated_says_its_language(string document, string marked) => Assert.Equal(marked, Originals.InHtml(document, "en"));

    [Fact]
    public void In_Markdown_the_language_stands_behind_it() => Assert.Equal("- lid (en) ausbauen", Originals.InMarkdown("- ⁨lid⁩ ausbauen", "en"));
}
