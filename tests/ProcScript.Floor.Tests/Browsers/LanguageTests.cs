using System.Text.Json;
using Microsoft.Playwright;
using ProcScript.Analysis.Messages;
using ProcScript.Browser.Tests;
using ProcScript.Floor.Tests.Words;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>The page in each of the languages that cards are printed in.</summary>
public sealed class LanguageTests(ChromiumFixture chromium)
{
    private const int Narrow = 390;

    private static readonly int[] Counts = [0, 1, 2, 5, 12, 22];

    public static TheoryData<PackLanguage> Languages => [.. PackLanguages.All];

    [Theory]
    [MemberData(nameof(Languages))]
    public async Task The_browser_writes_every_message_as_cards_do(PackLanguage language)
    {
        await using var floor = await RunningFloor.StartAsync();
        await using var tablet = await TakeAsync(language);
        await tablet.Page.GotoAsync(floor.Address.AbsoluteUri);
        var words = PageWords.In(language);
        var asked = words.SelectMany(message => Counts.Select(count => (message.Key, Values: IcuMessage.Parse(message.Value).Arguments.ToDictionary(name => name, name => name == "count" ? (object)count : $"<{name}>")))).ToList();

        var said = await tablet.Page.EvaluateAsync<string[]>(
            "async asked => { const { phrase } = await import('/page/words.js'); return JSON.parse(asked).map(([key, values]) => phrase(key, values)); }",
            JsonSerializer.Serialize(asked.Select(one => new object[] { one.Key, one.Values })));

        Assert.Equal(asked.Select(one => PageWords.Say(language, words[one.Key], one.Values)), said);
    }

    [Slow]
    [Theory]
    [InlineData(PackLanguage.German)]
    [InlineData(PackLanguage.French)]
    [InlineData(PackLanguage.Spanish)]
    [InlineData(PackLanguage.Polish)]
    public async Task Every_view_speaks_the_language_of_the_tablet(PackLanguage language)
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        await using var tablet = await TakeAsync(language);
        var (page, words) = (tablet.Page, PageWords.In(language));
        string Say(string key, params (string Name, object Value)[] values) => PageWords.Say(language, words[key], values.ToDictionary(one => one.Name, one => one.Value));
        await page.GotoAsync(floor.Address.AbsoluteUri);
        await Assertions.Expect(page.Locator("#head h1")).ToHaveTextAsync(Say("head.jobs"));
        await Assertions.Expect(page.Locator(".job")).ToContainTextAsync(Say("state.open"));
        Assert.Equal(language.Tag(), await page.EvaluateAsync<string>("document.documentElement.lang"));

        await FitsAsync(page, $"{language.Tag()}-board");
        await page.Locator(".job a").ClickAsync();
        await Assertions.Expect(page.Locator("#job-cards .phase").First).ToHaveTextAsync(Say("phase.strip"));
        Assert.Equal("en", await page.EvaluateAsync<string>("document.getElementById('job-cards').lang"));
        await tablet.Step(1).Locator(".tick").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Dialog)).ToContainTextAsync(Say("tick.has-reading", ("number", 1)));
        await page.GetByRole(AriaRole.Button, new() { Name = Say("tick.reading-later") }).ClickAsync();
        await tablet.ShowsDoneAsync(1);
        await FitsAsync(page, $"{language.Tag()}-job");
        foreach (var action in new[] { "foot.other", "foot.bags", "foot.stop", "foot.close" })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = Say(action), Exact = true }).ClickAsync();
            await Assertions.Expect(page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Button, new() { Name = Say("back"), Exact = true })).ToBeVisibleAsync();
            await Assertions.Expect(page.GetByRole(AriaRole.Dialog).Locator("h2")).ToHaveTextAsync(Say(action));
            await FitsAsync(page, $"{language.Tag()}-{action}");
            await page.Keyboard.PressAsync("Escape");
        }

        await page.GotoAsync(new Uri(floor.Address, $"/b/{job}/1").AbsoluteUri);
        var off = page.Locator(".contents a").First;
        await Assertions.Expect(off).ToHaveTextAsync(Say("bag.off-at", ("number", (await off.GetAttributeAsync("href"))!.Split("#step-")[1])));
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = Say("bag.count-it") })).ToBeVisibleAsync();
        await FitsAsync(page, $"{language.Tag()}-bag");
        await page.GotoAsync(new Uri(floor.Address, "/pair").AbsoluteUri);
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync(Say("pair.title"));
        Assert.Empty(tablet.Complaints);
    }

    [Fact]
    public async Task The_language_is_chosen_where_the_name_is_said()
    {
        await using var floor = await RunningFloor.StartAsync();
        await using var tablet = await Tablet.TakeAsync(chromium, "Mara");
        await tablet.Page.GotoAsync(floor.Address.AbsoluteUri);
        await tablet.Page.Locator("#who").ClickAsync();

        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Polski" }).ClickAsync();

        await Assertions.Expect(tablet.Page.Locator("#head h1")).ToHaveTextAsync(PageWords.In(PackLanguage.Polish)["head.jobs"]);
        Assert.Empty(tablet.Complaints);
    }

    /// <summary>Longer words than the English ones still have their place on the narrowest screen.</summary>
    private static async Task FitsAsync(IPage page, string view)
    {
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= Narrow, $"{view} is wider than the screen");
        Assert.Equal("", await page.EvaluateAsync<string>("[...document.querySelectorAll('#foot, #foot button, dialog button')].filter(one => one.scrollWidth > one.clientWidth).map(one => one.textContent).join()"));
        if (Environment.GetEnvironmentVariable("FLOOR_PICTURES") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{view}.png") });
        }
    }

    private async Task<Tablet> TakeAsync(PackLanguage language)
    {
        var tablet = await Tablet.TakeAsync(chromium, "Mara", Narrow, 844);
        await tablet.Page.Context.AddInitScriptAsync($"localStorage.setItem('floor.language', '{language.Tag()}')");
        return tablet;
    }
}
