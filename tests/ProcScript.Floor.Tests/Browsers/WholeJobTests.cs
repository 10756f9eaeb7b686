using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Browser.Tests;
using ProcScript.Jobs.Journals;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>A job from its first step to its closing by somebody who knows nothing but what the screen says.</summary>
public sealed partial class WholeJobTests(ChromiumFixture chromium)
{
    private const int MostMoments = 200;

    [Fact]
    public async Task A_job_is_done_by_what_the_screen_says_alone()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using var tablet = await Tablet.TakeAsync(chromium, "Mara");
        var page = tablet.Page;
        await page.GotoAsync(floor.Address.AbsoluteUri);
        await page.GetByText("Take the operator seat out").ClickAsync();
        await tablet.SaysAsync("All is written down");

        for (var moment = 0; moment < MostMoments && await IsLeftAsync(page); moment++)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Next step" }).ClickAsync();
            var step = page.Locator(".step.next").First;
            var id = (await step.GetAttributeAsync("id"))!;
            if (await step.Locator(".reading").CountAsync() > 0)
            {
                await ReadAsync(page, step, id);
            }

            await page.Locator($"#{id} .tick").ClickAsync();
            await Assertions.Expect(page.Locator($"#{id}.done")).ToHaveCountAsync(1);
            await PictureAsync(page, $"whole-{moment:00}");
        }

        Assert.Empty(tablet.Complaints);
        await tablet.SaysAsync("All is written down");
        await page.GetByRole(AriaRole.Button, new() { Name = "Close the job" }).ClickAsync();
        await PictureAsync(page, "whole-closing");
        await Assertions.Expect(page.GetByRole(AriaRole.Dialog)).ToContainTextAsync("The machine is whole");
        await page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Button, new() { Name = "Close the job" }).ClickAsync();
        await Assertions.Expect(page.Locator("#job-notes")).ToContainTextAsync("Closed by Mara");
        await tablet.SaysAsync("All is written down");
        await PictureAsync(page, "whole-closed");

        var last = (await floor.EventsAsync(job))[^1];
        Assert.Equal((EventKind.Closed, null), (last.Kind, last.Despite));
        Assert.Empty(tablet.Complaints);
    }

    /// <summary>Whether a step is next, given the moment that the page needs to show it.</summary>
    private static async Task<bool> IsLeftAsync(IPage page)
    {
        for (var tries = 0; tries < 10; tries++)
        {
            if (await page.Locator(".step.next").CountAsync() > 0)
            {
                return true;
            }

            await Task.Delay(100);
        }

        return false;
    }

    /// <summary>Writes down what the label asks for: a first value that is out, which the screen says at once, and one that is right.</summary>
    private static async Task ReadAsync(IPage page, ILocator step, string id)
    {
        var label = await step.Locator(".reading label").InnerTextAsync();
        var most = double.Parse(Below().Match(label).Groups["most"].Value, CultureInfo.InvariantCulture);
        var field = page.Locator($"#{id} .reading input");
        await field.FillAsync((2 * most).ToString(CultureInfo.InvariantCulture));
        await Assertions.Expect(page.Locator($"#{id} .verdict")).ToContainTextAsync("Out: it must be");
        await PictureAsync(page, "whole-out");
        await field.FillAsync((most / 2).ToString(CultureInfo.InvariantCulture).Replace('.', ','));
        await Assertions.Expect(page.Locator($"#{id} .verdict")).ToContainTextAsync("Right");
        await page.Locator($"#{id}").GetByRole(AriaRole.Button, new() { Name = "Write down" }).ClickAsync();
        await Assertions.Expect(page.Locator($"#{id} .read.good")).ToBeVisibleAsync();
    }

    private static async Task PictureAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("FLOOR_PICTURES") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}.png") });
        }
    }

    [GeneratedRegex(@"(below|at most) (?<most>[\d.]+)")]
    private static partial Regex Below();
}
