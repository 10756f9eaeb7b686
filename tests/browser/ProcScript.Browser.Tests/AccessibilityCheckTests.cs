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

        var result = await AccessibilityCheck.CheckAsync(page);

        Assert.Equal("image-alt", Assert.Single(result.Violations).Id);
    }

    [Fact]
    public async Task A_plain_sound_page_has_no_violation()
    {
        var page = await chromium.NewPageAsync();
        await page.SetContentAsync("""
            <!doctype html><html lang="en"><title>Pump</title><main><h1>Pump</h1><p>Remove the cover.</p></main></html>
            """);

        var result = await AccessibilityCheck.CheckAsync(page);

        Assert.Empty(result.Violations);
    }
}
