using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(ProcScript.Browser.Tests.ChromiumFixture))]

namespace ProcScript.Browser.Tests;

/// <summary>
/// One headless Chromium for all tests: the one that CHROMIUM names, or the system's. Its headless shell comes first: it lays out, prints
/// and keeps as Chromium does, and without windows, profiles and spare processes a page takes half the processor time.
/// </summary>
public sealed class ChromiumFixture : IAsyncLifetime
{
    private static readonly string[] Usual = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];

    /// <summary>
    /// How long what a page is to show may take, in milliseconds: as long as Playwright gives to whatever is done on it. What comes at once
    /// waits no longer for that, and a busy machine is no fault of the page.
    /// </summary>
    private const float Patience = 30_000;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("procscript-browser-");
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Opens an empty page in a context of its own, or skips the test where there is no Chromium.</summary>
    /// <param name="options">What the context differs in, its viewport for one.</param>
    public async Task<IPage> NewPageAsync(BrowserNewContextOptions? options = null)
    {
        Assert.SkipWhen(_browser is null, $"No Chromium: set CHROMIUM to one, or install one as {string.Join(" or ", Usual)}.");
        var context = await _browser!.NewContextAsync(options);
        return await context.NewPageAsync();
    }

    /// <summary>Writes a document into a file of its own and gives its address.</summary>
    public string Write(string html)
    {
        var path = Path.Combine(_folder.CreateSubdirectory(Guid.NewGuid().ToString("n")).FullName, "pack.html");
        File.WriteAllText(path, html);
        return new Uri(path).AbsoluteUri;
    }

    public async ValueTask InitializeAsync()
    {
        var executable = Environment.GetEnvironmentVariable("CHROMIUM") ?? Usual.FirstOrDefault(File.Exists);
        if (!File.Exists(executable))
        {
            return;
        }

        Assertions.SetDefaultExpectTimeout(Patience);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = executable,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        _folder.Delete(recursive: true);
    }
}
