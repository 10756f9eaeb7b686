using Microsoft.Playwright;
using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>What somebody prints from the open page is what was built: the same sheets with the same lines on each.</summary>
public sealed class PrintingFromTheScreen(ChromiumFixture chromium)
{
    [Slow]
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task The_sheets_are_those_of_the_page_without_its_script(string paper)
    {
        var address = chromium.Write(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text);
        await using var built = await OpenPack.AtAsync(chromium, address, new BrowserNewContextOptions { JavaScriptEnabled = false });
        await using var open = await OpenPack.AtAsync(chromium, address);
        await open.Page.Locator("[data-do=find]").FillAsync("bolt");

        var (planned, printed) = (await PrintAsync(built, paper), await PrintAsync(open, paper));

        Assert.Equal(planned, printed);
    }

    [Fact]
    public async Task Ticks_and_photos_move_nothing_to_another_sheet()
    {
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text));
        var before = await PrintAsync(pack, "A4");

        await pack.Field("step-1").CheckAsync();
        await pack.Page.Locator(".photo input[type=file]").First.SetInputFilesAsync(new FilePayload
        {
            Name = "dot.gif",
            MimeType = "image/gif",
            Buffer = Convert.FromBase64String("R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7"),
        });
        await Assertions.Expect(pack.Page.Locator(".pictures img")).ToHaveCountAsync(1);

        Assert.Equal(before, await PrintAsync(pack, "A4"));
    }

    private static async Task<IReadOnlyList<string>> PrintAsync(OpenPack pack, string paper) =>
        [.. (await PrintedPage.ReadAsync(await pack.Page.PdfAsync(new PagePdfOptions { Format = paper }))).Select(page => page.Text)];
}
