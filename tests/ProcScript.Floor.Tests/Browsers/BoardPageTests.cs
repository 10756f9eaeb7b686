using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Browser.Tests;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Tests;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>The board on a screen in the shop: it changes as the jobs do, and thousands of them are no trouble to it.</summary>
public sealed class BoardPageTests(ChromiumFixture chromium)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_board_follows_the_jobs()
    {
        await using var floor = await RunningFloor.StartAsync();
        await using var tablet = await Tablet.TakeAsync(chromium, "Mara");
        var page = tablet.Page;
        var first = await OpenAsync(floor.Folder, "first");
        await page.GotoAsync(floor.Address.AbsoluteUri);
        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(1);

        // Another program opens one in a folder below, and goes on with both.
        var shelf = Path.Combine(floor.Folder, "2026");
        var second = await OpenAsync(shelf, "second");
        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(2);
        await TellAsync(shelf, second, EventKind.Done, 1);
        await Assertions.Expect(page.Locator(".job").First).ToContainTextAsync("1 of 9");
        await Assertions.Expect(page.Locator(".job").First).ToContainTextAsync("second");
        await TellAsync(floor.Folder, first, EventKind.HandOver);
        await Assertions.Expect(page.Locator(".job").First).ToContainTextAsync("handed over by Kern to Tomas");
        await TellAsync(shelf, second, EventKind.Closed);
        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(1);
        await page.GetByText("Closed ones too").ClickAsync();
        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(2);
        Directory.Delete(Path.Combine(floor.Folder, first), recursive: true);
        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(1);

        await Assertions.Expect(page.Locator(".job")).ToContainTextAsync("second");
        Assert.Empty(tablet.Complaints);
    }

    [Slow]
    [Fact]
    public async Task Of_many_jobs_the_last_are_shown_and_all_are_found()
    {
        const int jobs = 230;
        await using var floor = await RunningFloor.StartAsync();
        for (var i = 0; i < jobs; i++)
        {
            await OpenAsync(floor.Folder, $"number-{i}");
        }

        await using var tablet = await Tablet.TakeAsync(chromium, "Mara");
        var page = tablet.Page;
        await page.GotoAsync(floor.Address.AbsoluteUri);

        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(200);
        await Assertions.Expect(page.GetByText(new Regex("^30 more"))).ToBeVisibleAsync();
        await page.Locator("#find").FillAsync("number-0");
        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(1);
        await Assertions.Expect(page.GetByText(new Regex("more:"))).ToBeHiddenAsync();
        Assert.Empty(tablet.Complaints);
    }

    private static Task<string> OpenAsync(string folder, string name) => new FileJobStore(folder).CreateAsync(
        name,
        ImmutableDictionary<string, byte[]>.Empty,
        Event(EventKind.Opened) with { Job = new JobHead("1", name, $"Take the {name} out", "m", "Machine", "K-1", "4711", [], "r1", 9, "test") },
        Stop);

    private static Task TellAsync(string folder, string job, EventKind kind, int? step = null) => new FileJobStore(folder).AppendAsync(job, Event(kind) with { Step = step, To = "Tomas" }, Stop);

    private static JobEvent Event(EventKind kind) => new() { Id = Guid.NewGuid().ToString("N"), Kind = kind, At = DemoJobs.Day, Logged = DateTimeOffset.UtcNow, By = "Kern", Plan = "r1" };
}
