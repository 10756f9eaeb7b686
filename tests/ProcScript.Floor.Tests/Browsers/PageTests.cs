using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Browser.Tests;
using ProcScript.Jobs.Journals;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>The page as somebody with gloves sees it. Where FLOOR_PICTURES names a folder, pictures of it go there.</summary>
public sealed class PageTests(ChromiumFixture chromium)
{
    private const int Narrow = 390;

    private static readonly byte[] Pixel = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");

    [Slow]
    [Theory]
    [InlineData(768, 1024)]
    [InlineData(1024, 768)]
    [InlineData(Narrow, 844)]
    public async Task Every_view_is_within_reach_of_everybody_and_of_gloves(int width, int height)
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await FloorJobs.OpenAsync(floor.Store, "replace_evaporator");
        await using var tablet = await Tablet.TakeAsync(chromium, "Mara", width, height);
        var page = tablet.Page;
        // What axe looks at is hardly a matter of the width: once for each view, and in every width where everything is asked for.
        var isForAxe = Depth.IsWhole || width == Narrow;

        await page.GotoAsync(floor.Address.AbsoluteUri);
        await Assertions.Expect(page.Locator(".job")).ToHaveCountAsync(2);
        await LooksRightAsync(page, $"board-{width}", isForAxe);
        await page.GetByText("Take the operator seat out").ClickAsync();
        await tablet.SaysAsync("All is written down");
        await LooksRightAsync(page, $"job-{width}", isForAxe);
        await tablet.TickAsync(1);
        await LooksRightAsync(page, $"job-first-{width}", isForAxe);
        foreach (var action in new[] { "Other than planned", "Bags", "Stop or hand over", "Close the job" })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = action, Exact = true }).ClickAsync();
            await Assertions.Expect(page.GetByRole(AriaRole.Dialog)).ToBeVisibleAsync();
            await LooksRightAsync(page, $"{action.Split(' ')[0].ToLowerInvariant()}-{width}", isForAxe);
            await page.Keyboard.PressAsync("Escape");
            await Assertions.Expect(page.GetByRole(AriaRole.Dialog)).ToHaveCountAsync(0);
        }

        await page.GotoAsync(new Uri(floor.Address, $"/b/{job}/1").AbsoluteUri);
        await Assertions.Expect(page.Locator(".contents")).ToBeVisibleAsync();
        await LooksRightAsync(page, $"bag-{width}", isForAxe);
        await page.GetByRole(AriaRole.Link, new() { Name = "back at step" }).First.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("#step-"));
        await Assertions.Expect(page.Locator(new Uri(page.Url).Fragment)).ToBeInViewportAsync();
        await LooksRightAsync(page, $"step-{width}", isForAxe);
        await page.GotoAsync(new Uri(floor.Address, "/pair").AbsoluteUri);
        await Assertions.Expect(page.Locator("#code")).ToBeVisibleAsync();
        await LooksRightAsync(page, $"pair-{width}", isForAxe);
        Assert.Empty(tablet.Complaints);
        Assert.Empty(tablet.Foreign);
    }

    [Fact]
    public async Task A_tablet_is_paired_by_its_code_and_asks_once_who_works_there()
    {
        await using var floor = await RunningFloor.StartAsync(pairing: true);
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using var tablet = await Tablet.TakeAsync(chromium, who: null);
        var page = tablet.Page;
        await page.GotoAsync(new Uri(floor.Address, $"/j/{job}").AbsoluteUri);
        await page.Locator("#code").FillAsync("0");
        await page.GetByRole(AriaRole.Button, new() { Name = "Pair" }).ClickAsync();
        await Assertions.Expect(page.Locator("#why")).ToContainTextAsync("not the code");
        await page.Locator("#code").FillAsync(Doors.PairingDesk.Spaced(floor.Server.Pairing.Code));
        await page.GetByRole(AriaRole.Button, new() { Name = "Pair" }).ClickAsync();
        await page.GetByText("Take the operator seat out").ClickAsync();

        await tablet.Step(1).Locator(".tick").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done, the reading comes later" }).ClickAsync();
        await page.Locator("#name").FillAsync("<img src=x onerror=alert(1)>");
        await page.GetByRole(AriaRole.Button, new() { Name = "That is me" }).ClickAsync();
        await tablet.ShowsDoneAsync(1);
        await tablet.TickAsync(2);

        await Assertions.Expect(tablet.Step(1)).ToContainTextAsync("<img src=x onerror=alert(1)>");
        Assert.Equal(["<img src=x onerror=alert(1)>"], (await floor.EventsAsync(job)).Skip(1).Select(happened => happened.By).Distinct());
        Assert.Empty(tablet.Complaints);
    }

    [Fact]
    public async Task What_is_told_beside_the_ticks_stands_in_the_journal()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using var tablet = await Tablet.TakeAsync(chromium, "Mara");
        var page = tablet.Page;
        await page.GotoAsync(new Uri(floor.Address, $"/j/{job}").AbsoluteUri);
        await tablet.TickAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(page.Locator("#step-1:not(.done)")).ToBeVisibleAsync();

        await OtherAsync(page, "Something broke");
        await page.Locator(".items button").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "It broke" }).ClickAsync();
        await OtherAsync(page, "Photo");
        await page.Locator("#photo").SetInputFilesAsync(new FilePayload { Name = "a.png", MimeType = "image/png", Buffer = Pixel });
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the photo" }).ClickAsync();
        await tablet.SaysAsync("All is written down");
        Assert.Empty(tablet.Complaints);
        await Assertions.Expect(page.Locator("img.shot")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop or hand over" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Somebody else goes on" }).ClickAsync();
        await page.Locator("#name").FillAsync("Tomas");
        await page.GetByRole(AriaRole.Button, new() { Name = "Hand over to them" }).ClickAsync();
        await page.Locator("#text").FillAsync("The seat is loose.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Hand over", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("#job-notes")).ToContainTextAsync("handed it over to Tomas: The seat is loose.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).First.ClickAsync();
        await Assertions.Expect(page.Locator("#job-notes")).Not.ToContainTextAsync("handed it over");
        await tablet.SaysAsync("All is written down");

        Assert.Equal(
            [EventKind.Opened, EventKind.Done, EventKind.Undone, EventKind.Broke, EventKind.Photo, EventKind.HandOver, EventKind.Resume],
            (await floor.EventsAsync(job)).Select(happened => happened.Kind));
        Assert.Empty(tablet.Complaints);
    }

    [Fact]
    public async Task A_tool_that_the_cards_do_not_name_is_told_at_its_step()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using var tablet = await Tablet.TakeAsync(chromium, "Mara");
        var page = tablet.Page;

        await page.GotoAsync(new Uri(floor.Address, $"/j/{job}").AbsoluteUri);
        await tablet.SaysAsync("All is written down");
        await page.GetByRole(AriaRole.Button, new() { Name = "Step 1: something other than planned" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "A tool is missing" }).ClickAsync();
        await LooksRightAsync(page, "tool");
        await page.Locator("#tool").FillAsync("step stool");
        await page.GetByRole(AriaRole.Button, new() { Name = "It is missing" }).ClickAsync();
        await Assertions.Expect(page.Locator("#job-story")).ToContainTextAsync("a tool was missing at step 1: step stool");
        await tablet.SaysAsync("All is written down");

        Assert.Equal([(EventKind.Opened, null, null), (EventKind.Missing, 1, "step stool")], (await floor.EventsAsync(job)).Select(happened => (happened.Kind, happened.Step, happened.Tool)));
        Assert.Empty(tablet.Complaints);
    }

    private static async Task OtherAsync(IPage page, string what)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Other than planned", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = what }).ClickAsync();
    }

    /// <summary>Nothing for axe to find, nothing beyond the edge of the screen, and nothing too small for a glove.</summary>
    private static async Task LooksRightAsync(IPage page, string name, bool isForAxe = true)
    {
        if (Environment.GetEnvironmentVariable("FLOOR_PICTURES") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}.png") });
        }

        if (isForAxe)
        {
            Assert.Empty((await AccessibilityCheck.CheckAsync(page)).Select(finding => $"{name}: {finding}"));
        }

        Assert.Equal(0, await page.EvaluateAsync<int>("() => Math.max(0, document.documentElement.scrollWidth - innerWidth)"));
        Assert.Empty(await page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('button, input:not([type=checkbox]), select, summary, .back, .board a, .bags a, .contents a, .facts a')]
              .map(one => [one, one.getBoundingClientRect()])
              .filter(([, box]) => box.width > 0 && (box.width < 48 || box.height < 48)).map(([one, box]) => `${one.outerHTML.slice(0, 80)}: ${box.width} × ${box.height}`)
            """));
    }
}
