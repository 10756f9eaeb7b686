using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Browser.Tests;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>A tablet: a browser of its own, with somebody who works at it.</summary>
internal sealed class Tablet : IAsyncDisposable
{
    private readonly List<string> _complaints = [];
    private readonly List<string> _foreign = [];

    private Tablet(IPage page) => Page = page;

    public IPage Page { get; }

    /// <summary>What went wrong in the page.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>What the page has asked of others than the server.</summary>
    public IReadOnlyList<string> Foreign => _foreign;

    /// <summary>Takes one up.</summary>
    /// <param name="chromium">The browser.</param>
    /// <param name="who">Who works at it; null where nobody has said.</param>
    /// <param name="width">How wide it is, in pixels.</param>
    /// <param name="height">How high it is, in pixels.</param>
    /// <param name="workers">Whether the page may have a service worker: once it has one, a test that routes requests no longer sees them.</param>
    public static async Task<Tablet> TakeAsync(ChromiumFixture chromium, string? who, int width = 768, int height = 1024, ServiceWorkerPolicy workers = ServiceWorkerPolicy.Allow)
    {
        var page = await chromium.NewPageAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height }, HasTouch = true, ServiceWorkers = workers });
        Tablet tablet = new(page);
        page.PageError += (_, failure) => tablet._complaints.Add(failure);
        page.Console += (_, line) =>
        {
            // That the network is away is no fault of the page.
            if (line.Type == "error" && !line.Text.Contains("net::ERR", StringComparison.Ordinal) && !line.Text.Contains("Failed to load resource", StringComparison.Ordinal))
            {
                tablet._complaints.Add(line.Text);
            }
        };
        page.Context.Request += (_, request) =>
        {
            if (new Uri(request.Url) is { Scheme: "http" or "https" or "ws" or "wss", Host: not "127.0.0.1" })
            {
                tablet._foreign.Add(request.Url);
            }
        };
        if (who is not null)
        {
            await page.Context.AddInitScriptAsync($"localStorage.setItem('floor.name', '{who}')");
        }

        return tablet;
    }

    /// <summary>A step.</summary>
    public ILocator Step(int number) => Page.Locator($"#step-{number}");

    /// <summary>Ticks a step that is next, and says where asked that its reading comes later.</summary>
    public async Task TickAsync(int number)
    {
        await OpenCardAsync(number);
        await Step(number).Locator(".tick").ClickAsync();
        var done = Page.Locator($"#step-{number}.done");
        var later = Page.GetByRole(AriaRole.Button, new() { Name = "Done, the reading comes later" });
        await Assertions.Expect(done.Or(later).First).ToBeVisibleAsync();
        if (await later.IsVisibleAsync())
        {
            await later.ClickAsync();
        }

        await ShowsDoneAsync(number);
    }

    /// <summary>Waits until a step shows as done.</summary>
    public Task ShowsDoneAsync(int number) => Assertions.Expect(Step(number)).ToHaveClassAsync(new Regex("\\bdone\\b"));

    /// <summary>Waits until the line at the top says something.</summary>
    public Task SaysAsync(string text) => Assertions.Expect(Page.Locator("#reach")).ToContainTextAsync(text, new() { Timeout = 20_000 });

    /// <summary>Opens the card of a step.</summary>
    public async Task OpenCardAsync(int number)
    {
        foreach (var card in await Page.Locator("details.card:not([open]) > summary").AllAsync())
        {
            if (await Step(number).CountAsync() > 0 && await Step(number).IsVisibleAsync())
            {
                break;
            }

            await card.ClickAsync();
        }

        await Assertions.Expect(Step(number)).ToBeVisibleAsync();
    }

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
}
