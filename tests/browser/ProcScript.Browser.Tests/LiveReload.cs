using Microsoft.Playwright;
using ProcScript.Cli.Tests;
using ProcScript.Cli.Tests.Processes;
using ProcScript.Cli.Tests.Watching;

namespace ProcScript.Browser.Tests;

/// <summary>Cards that <c>build --watch</c> serves follow the sources without being asked.</summary>
[Slow]
public sealed class LiveReload(ChromiumFixture chromium) : IDisposable
{
    private const string Source = "velmarra-v2/pump.proc";
    private const string Title = "Replace the rotary pump";
    private const string Stale = "The sources have errors since the last change";

    private readonly TemporaryFolder _library = Demo();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task An_open_page_shows_each_change_and_keeps_the_last_cards_while_the_source_is_broken()
    {
        Signals.SkipWithout();
        var page = await chromium.NewPageAsync();
        // Counted by each page as it begins: the browser tells of a load some time after the page shows what is waited for.
        await page.AddInitScriptAsync("sessionStorage.setItem('loads', 1 + Number(sessionStorage.getItem('loads')))");
        using var run = WatchedRun.Start(_library.Path, "build", Source, "-o", "packs", "--watch");
        var address = (await run.LineAsync("serving packs at "))["serving packs at ".Length..];
        Assert.Equal("1 pack written", await run.RoundAsync());
        await page.GotoAsync(address + "replace_pump/cards.html");
        Assert.Equal(Title, await page.Locator("h1").First.InnerTextAsync());
        Assert.Equal("1", await LoadsAsync(page));

        Change(Title, "Renew the rotary pump");
        Assert.Equal("1 pack written", await run.RoundAsync());
        await ShowsAsync(page, "Renew the rotary pump");
        Assert.Equal("2", await LoadsAsync(page));
        Assert.Equal(0, await page.GetByText(Stale).CountAsync());

        // The pump is still held: there is no proof, and so no new cards.
        Change("    undo pump_ring\n", "");
        Assert.Equal("0 packs written, 1 procedure not proven", await run.RoundAsync());
        await Assertions.Expect(page.GetByText(Stale)).ToBeVisibleAsync();
        await ShowsAsync(page, "Renew the rotary pump");
        Assert.DoesNotContain(Stale, _library.Read("packs/replace_pump/cards.html"), StringComparison.Ordinal);

        // No text any more that could be read.
        Change("procedure replace_pump", "procedure {");
        Assert.Contains("error", await run.RoundAsync(), StringComparison.Ordinal);
        await ShowsAsync(page, "Renew the rotary pump");
        await Assertions.Expect(page.GetByText(Stale)).ToBeVisibleAsync();

        Change("procedure {", "procedure replace_pump");
        Change("    remove pump\n", "    undo pump_ring\n    remove pump\n");
        Change("Renew the rotary pump", "Exchange the rotary pump");
        while (await run.RoundAsync() != "1 pack written")
        {
            // Three saves may be taken for several changes.
        }

        await ShowsAsync(page, "Exchange the rotary pump");
        Assert.Equal(0, await page.GetByText(Stale).CountAsync());
        Assert.Equal((0, ""), await run.StopAsync());
    }

    /// <summary>A copy of the demo library.</summary>
    private static TemporaryFolder Demo()
    {
        var demo = Path.Combine(Checkout.Root, "procedures");
        TemporaryFolder copy = new();
        foreach (var file in Directory.EnumerateFiles(demo, "*.*", SearchOption.AllDirectories))
        {
            copy.With(Path.GetRelativePath(demo, file), File.ReadAllBytes(file));
        }

        return copy;
    }

    private static Task ShowsAsync(IPage page, string title) => Assertions.Expect(page.Locator("h1").First).ToHaveTextAsync(title);

    private static Task<string> LoadsAsync(IPage page) => page.EvaluateAsync<string>("() => sessionStorage.getItem('loads')");

    /// <summary>Saves as editors do, in one move: a file that is being written would be read as an empty one.</summary>
    private void Change(string old, string text)
    {
        var source = _library.Read(Source);
        Assert.Contains(old, source, StringComparison.Ordinal);
        _library.With($"{Source}.saving", source.Replace(old, text, StringComparison.Ordinal));
        File.Move(_library[$"{Source}.saving"], _library[Source], overwrite: true);
    }
}
