namespace ProcScript.Browser.Tests;

/// <summary>The check that the cards' pages are held to must itself be able to fail.</summary>
public sealed class AccessibilityCheckTests(ChromiumFixture chromium)
{
    [Fact]
    public async Task A_picture_without_a_text_is_found()
    {
        var page = await chromium.NewPageAsync();
        await page.SetContentAsync("""
            <!doctype html><html lang="en"><title>Pump</title><main><h1>Pump</h1><img src="data:image/png;base64,AA=="></main></html>
            """);

        var finding = Assert.Single(await AccessibilityCheck.CheckAsync(page));

        Assert.Equal(("image-alt", true), (finding.Rule, finding.IsSerious));
        Assert.StartsWith("<img", Assert.Single(finding.Places), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plain_sound_page_has_no_violation()
    {
        var page = await chromium.NewPageAsync();
        await page.SetContentAsync("""
            <!doctype html><html lang="en"><title>Pump</title><main><h1>Pump</h1><p>Remove the cover.</p></main></html>
            """);

        Assert.Empty(await AccessibilityCheck.CheckAsync(page));
    }
}
