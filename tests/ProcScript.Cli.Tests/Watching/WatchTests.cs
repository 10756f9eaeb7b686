using ProcScript.Cli.Tests.Malformed;
using ProcScript.Cli.Tests.Processes;

namespace ProcScript.Cli.Tests.Watching;

[Slow]
public sealed class WatchTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task A_check_is_done_again_whenever_a_file_changes_however_it_is_written()
    {
        Signals.SkipWithout();
        _disk.With("a.proc", Sample.Text);
        using var run = WatchedRun.Start(_disk.Path, "check", ".", "--watch");
        Assert.Equal("checked 1 procedure in 1 file: all proven", await run.RoundAsync());

        _disk.With("a.proc", Sample.Steps("remove cover"));
        Assert.StartsWith("1 error in 1 file", await run.RoundAsync(), StringComparison.Ordinal);

        // As editors save: beside the file, and then under its name.
        _disk.With(".a.proc.swp", Sample.Text);
        File.Move(_disk[".a.proc.swp"], _disk["a.proc"], overwrite: true);
        Assert.Equal("checked 1 procedure in 1 file: all proven", await run.RoundAsync());

        _disk.With("sub/b.proc", Sample.Another);
        Assert.Equal("checked 2 procedures in 2 files: all proven", await run.RoundAsync());
        Directory.Delete(_disk["sub"], recursive: true);
        Assert.Equal("checked 1 procedure in 1 file: all proven", await run.RoundAsync());

        Assert.Equal((0, ""), await run.StopAsync());
    }

    [Fact]
    public async Task Built_packs_are_served_with_the_script_that_loads_them_again_and_written_without()
    {
        Signals.SkipWithout();
        _disk.With("a.proc", Sample.Text);
        using var run = WatchedRun.Start(_disk.Path, "build", ".", "-o", "packs", "--watch");
        var address = await run.LineAsync("serving ");
        await run.RoundAsync();
        address = address["serving packs at ".Length..];
        using HttpClient client = new() { BaseAddress = new Uri(address) };

        var page = await client.GetStringAsync("p/cards.html", TestContext.Current.CancellationToken);
        Assert.Contains("new EventSource('/_changes')", page, StringComparison.Ordinal);
        Assert.DoesNotContain("EventSource", _disk.Read("packs/p/cards.html"), StringComparison.Ordinal);
        Assert.Contains("href=\"/p/cards.html\"", await client.GetStringAsync("", TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(_disk.Read("packs/p/cards.md"), await client.GetStringAsync("p/cards.md", TestContext.Current.CancellationToken));
        foreach (var outside in new[] { "../a.proc", "%2e%2e/a.proc", "..%2fa.proc", "p", ".x", "p/none.html" })
        {
            Assert.Equal(System.Net.HttpStatusCode.NotFound, (await client.GetAsync(new Uri(address + outside), TestContext.Current.CancellationToken)).StatusCode);
        }

        using var changes = new StreamReader(await client.GetStreamAsync("_changes", TestContext.Current.CancellationToken));
        var first = await changes.ReadLineAsync(TestContext.Current.CancellationToken);
        _disk.With("a.proc", Sample.Text.Replace("Replace the pump", "Renew the pump", StringComparison.Ordinal));
        await changes.ReadLineAsync(TestContext.Current.CancellationToken);
        var second = await changes.ReadLineAsync(TestContext.Current.CancellationToken);

        Assert.StartsWith("data: ", first, StringComparison.Ordinal);
        Assert.NotEqual(first, second);
        Assert.Contains("Renew the pump", await client.GetStringAsync("p/cards.html", TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal((0, ""), await run.StopAsync());
    }

    [Fact]
    public async Task What_cannot_be_watched_is_said()
    {
        Assert.Equal(
            new CliRun(ExitCode.Usage, "", "procscript: the standard input cannot be watched: --watch is for files and folders.\n"),
            await CliRun.AtAsync(_disk.Path, "check", "-", "--watch"));
    }
}
