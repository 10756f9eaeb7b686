using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Browser.Tests;
using ProcScript.Jobs.Journals;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>Two people at one job, a network that drops, and a clock that is wrong: nothing is lost, nothing is there twice.</summary>
[Slow]
public sealed class TwoTabletsTests(ChromiumFixture chromium)
{
    [Fact]
    public async Task Two_tablets_go_on_without_a_network_and_come_to_the_same()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using CutLine line = new(floor.Address);
        await using var mara = await Tablet.TakeAsync(chromium, "Mara");
        await using var tomas = await Tablet.TakeAsync(chromium, "Tomas", 1024, 768);
        // The clock of this one is a day behind.
        await tomas.Page.Clock.SetFixedTimeAsync(DateTime.UtcNow.AddDays(-1));
        await mara.Page.GotoAsync(new Uri(floor.Address, $"/j/{job}").AbsoluteUri);
        await tomas.Page.GotoAsync(line.At($"/j/{job}"));
        await Assertions.Expect(tomas.Page.Locator("#job-notes")).ToContainTextAsync("clock is 24 hours behind");
        await tomas.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");

        await mara.TickAsync(1);
        await tomas.ShowsDoneAsync(1);

        line.Cut();
        await tomas.SaysAsync("No network");
        await tomas.TickAsync(2);
        await tomas.TickAsync(3);
        await mara.TickAsync(2);
        await mara.Page.GetByRole(AriaRole.Button, new() { Name = "Other than planned", Exact = true }).ClickAsync();
        await mara.Page.GetByRole(AriaRole.Button, new() { Name = "Note" }).ClickAsync();
        await mara.Page.Locator("#text").FillAsync("The left cover is cracked.");
        await mara.Page.GetByRole(AriaRole.Button, new() { Name = "Write down" }).Last.ClickAsync();
        // The tablet is laid down and taken up again, still without a network.
        await tomas.Page.ReloadAsync();
        await tomas.SaysAsync("No network: 2 kept here");
        await tomas.ShowsDoneAsync(3);
        await Assertions.Expect(tomas.Step(3)).ToContainTextAsync("kept here, sent later");
        await mara.SaysAsync("All is written down");

        line.Mend();
        await tomas.SaysAsync("All is written down");
        await mara.ShowsDoneAsync(3);
        await Assertions.Expect(tomas.Page.Locator("#job-story")).ToContainTextAsync("The left cover is cracked.");
        await Assertions.Expect(mara.Step(2)).ToContainTextAsync("told by Tomas too");
        await Assertions.Expect(tomas.Step(2)).ToContainTextAsync("told by Tomas too");
        await Assertions.Expect(mara.Step(3)).ToContainTextAsync("written down");

        var events = await floor.EventsAsync(job);
        Assert.Equal(["1 Mara", "2 Mara", "2 Tomas", "3 Tomas"], events.Where(happened => happened.Kind == EventKind.Done).Select(happened => $"{happened.Step} {happened.By}").Order(StringComparer.Ordinal));
        Assert.Single(events, happened => happened.Kind == EventKind.Note);
        Assert.Equal(6, events.Count);
        Assert.All(events.Where(happened => happened.By == "Tomas"), happened => Assert.InRange((happened.Logged - happened.At).TotalHours, 23.5, 24.5));
        Assert.Equal(await DoneAsync(mara), await DoneAsync(tomas));
        Assert.StartsWith("1 of 1", (await DoneAsync(tomas))[0], StringComparison.Ordinal);
        Assert.Empty(mara.Complaints.Concat(tomas.Complaints));
        Assert.Empty(mara.Foreign.Concat(tomas.Foreign));
    }

    [Fact]
    public async Task An_answer_that_is_lost_on_its_way_doubles_nothing()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using var mara = await Tablet.TakeAsync(chromium, "Mara", workers: ServiceWorkerPolicy.Block);
        await mara.Page.GotoAsync(new Uri(floor.Address, $"/j/{job}").AbsoluteUri);
        await mara.SaysAsync("All is written down");
        var lost = 0;
        await mara.Page.Context.RouteAsync(new Regex("/events$"), async route =>
        {
            if (route.Request.Method == "POST" && lost++ < 2)
            {
                // The server hears it, and the tablet never hears the answer.
                await route.FetchAsync();
                await route.AbortAsync();
                return;
            }

            await route.ContinueAsync();
        });

        await mara.TickAsync(1);
        for (var wait = 0; wait < 200 && lost <= 2; wait++)
        {
            // The page says so before as after: it has to have been sent three times.
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        await mara.SaysAsync("All is written down");

        Assert.True(lost > 2, $"sent {lost} times");
        Assert.Equal(2, (await floor.EventsAsync(job)).Count);
    }

    [Fact]
    public async Task What_the_server_refuses_stays_with_who_told_it()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using CutLine line = new(floor.Address);
        await using var mara = await Tablet.TakeAsync(chromium, "Mara");
        await mara.Page.GotoAsync(line.At($"/j/{job}"));
        await mara.SaysAsync("All is written down");
        line.Cut();
        await mara.TickAsync(1);
        using (var client = floor.Client())
        {
            var closed = Telling.Event("c", "closed", "Kern");
            (closed["text"], closed["despite"]) = ("sold", (await client.AskAsync($"/api/jobs/{job}/now"))["beforeClosing"]!.DeepClone());
            Assert.Null((await client.AnswersAsync(job, closed))[0]!["refusal"]);
        }

        line.Mend();
        await Assertions.Expect(mara.Page.Locator("#notes")).ToContainTextAsync("1 of what was told could not be written down", new() { Timeout = 20_000 });
        await mara.Page.ReloadAsync();
        await mara.Page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();
        await Assertions.Expect(mara.Page.GetByRole(AriaRole.Dialog)).ToContainTextAsync("the job was closed by Kern");
        await mara.Page.GetByRole(AriaRole.Button, new() { Name = "Write it down as a note" }).ClickAsync();
        await Assertions.Expect(mara.Page.Locator("#notes")).Not.ToContainTextAsync("could not be written down");
        await mara.SaysAsync("All is written down");

        var note = (await floor.EventsAsync(job))[^1];
        Assert.Equal(EventKind.Note, note.Kind);
        Assert.Contains("Done, step 1", note.Text!, StringComparison.Ordinal);
        Assert.Empty(mara.Complaints);
    }

    private static async Task<IReadOnlyList<string>> DoneAsync(Tablet tablet) => await tablet.Page.Locator(".card > summary .far").AllInnerTextsAsync();
}
