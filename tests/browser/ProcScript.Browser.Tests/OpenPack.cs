using Microsoft.Playwright;

namespace ProcScript.Browser.Tests;

/// <summary>A pack open in a page, and everything that must not have happened there.</summary>
internal sealed class OpenPack : IAsyncDisposable
{
    private OpenPack(IPage page)
    {
        Page = page;
        page.PageError += (_, error) => Complaints.Add(error);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                Complaints.Add(message.Text);
            }
        };
        page.Request += (_, request) => Requests.Add(request.Url);
        page.Dialog += (_, dialog) =>
        {
            Dialogs.Add(dialog.Message);
            _ = dialog.AcceptAsync();
        };
    }

    public IPage Page { get; }

    /// <summary>Script errors and refused content.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Everything the page asked for, itself first.</summary>
    public List<string> Requests { get; } = [];

    /// <summary>What was asked of the reader.</summary>
    public List<string> Dialogs { get; } = [];

    public static async Task<OpenPack> AtAsync(ChromiumFixture chromium, string address, BrowserNewContextOptions? options = null, string? before = null)
    {
        var page = await chromium.NewPageAsync(options);
        if (before is not null)
        {
            await page.AddInitScriptAsync(before);
        }

        OpenPack pack = new(page);
        await page.GotoAsync(address);
        return pack;
    }

    public ILocator Field(string name) => Page.Locator($"[data-field='{name}']");

    /// <summary>What the page says and what it has kept, for whoever reads of a failure.</summary>
    public Task<string> KeptAsync() => Page.EvaluateAsync<string>(
        "() => JSON.stringify([new Date(), document.querySelector('.said').textContent, Object.entries(sessionStorage), Object.values(localStorage)])");

    /// <summary>The same file in another tab of the same profile.</summary>
    public async Task<IPage> AnotherTabAsync(string address)
    {
        var page = await Page.Context.NewPageAsync();
        await page.GotoAsync(address);
        return page;
    }

    public ValueTask DisposeAsync() => Page.Context.DisposeAsync();
}
