using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>Words are written on the page and stay there, and what is handed over at a pause fits on a sheet of its own.</summary>
public sealed class HandingOver(ChromiumFixture chromium)
{
    private const string Words = "Coolant, from the lower union.\nAlso the drain.";

    [Fact]
    public async Task Words_and_hand_over_fields_survive_a_reload()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write());
        await pack.Field("step-2-words").FillAsync(Words);
        await pack.Field("hand-over-3-6-1-place").FillAsync("Rack 4");
        await pack.Field("hand-over-3-0-0").CheckAsync();
        await pack.Field("hand-over-3-name-takes-over").FillAsync("A. Turner");
        await pack.Field("hand-over-3-words").FillAsync("The key hangs in the office.");

        await pack.Page.ReloadAsync();

        Assert.Equal(Words, await pack.Field("step-2-words").InputValueAsync());
        Assert.Equal("Rack 4", await pack.Field("hand-over-3-6-1-place").InputValueAsync());
        Assert.True(await pack.Field("hand-over-3-0-0").IsCheckedAsync());
        Assert.False(await pack.Field("hand-over-3-1-0").IsCheckedAsync());
        Assert.Equal("A. Turner", await pack.Field("hand-over-3-name-takes-over").InputValueAsync());
        Assert.Equal("", await pack.Field("hand-over-3-name-hands-over").InputValueAsync());
        Assert.Equal("The key hangs in the office.", await pack.Field("hand-over-3-words").InputValueAsync());
        Assert.Empty(pack.Complaints);
    }

    [Fact]
    public async Task The_card_tells_every_line_and_axe_finds_nothing_serious()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write());
        var card = await pack.Page.Locator("#hand-over-3").InnerTextAsync();

        Assert.All(SampleHandOver.Card.Sections, section =>
        {
            Assert.Contains(section.Title, card, StringComparison.Ordinal);
            Assert.All(section.Lines, line => Assert.Contains(line.Text, card, StringComparison.Ordinal));
        });
        Assert.Contains("Continue with step 4: Undo 4", card, StringComparison.Ordinal);
        Assert.DoesNotContain(await AccessibilityCheck.CheckAsync(pack.Page), finding => finding.IsSerious);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task The_card_prints_on_one_sheet(string paper)
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write());

        var pages = await PrintedPage.ReadAsync(await pack.Page.PdfAsync(new() { Format = paper, PreferCSSPageSize = false }));

        var page = Assert.Single(pages, page => page.Text.Contains("Hand-over at step 3:", StringComparison.Ordinal));
        Assert.Contains("Takes over", page.Text, StringComparison.Ordinal);
        Assert.Contains("do not load it before", page.Text, StringComparison.Ordinal);
    }

    private string Write() => chromium.Write(WorkPack.Html(SampleHandOver.Paused, PackTemplates.Standard).Text);
}
