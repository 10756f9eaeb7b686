using Microsoft.Playwright;
using ProcScript.Analysis.Plans;
using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>A pack on a screen leads to what somebody looks for: by its words, by its numbers, by its cards, and by the keyboard alone.</summary>
public sealed class FindingOneself(ChromiumFixture chromium)
{
    [Fact]
    public async Task Two_keys_lead_to_the_first_step_and_its_tick_needs_no_mouse()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));

        await pack.Page.Keyboard.PressAsync("Tab");
        Assert.Equal("Go to step 1", await pack.Page.EvaluateAsync<string>("() => document.activeElement.textContent"));
        await pack.Page.Keyboard.PressAsync("Enter");
        await pack.Page.Keyboard.PressAsync("Tab");

        Assert.Equal("step-1", await pack.Page.EvaluateAsync<string>("() => document.activeElement.closest('.step').id"));
        for (var more = 0; more < 20 && await pack.Page.EvaluateAsync<string?>("() => document.activeElement.dataset.field") != "step-1"; more++)
        {
            await pack.Page.Keyboard.PressAsync("Tab");
        }

        await pack.Page.Keyboard.PressAsync("Space");
        Assert.True(await pack.Field("step-1").IsCheckedAsync());
    }

    [Fact]
    public async Task A_number_of_a_step_leads_to_the_step_and_below_the_bar()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Evaporator), new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 800, Height = 700 } });

        await pack.Page.Locator("#close-out a[href^='#step-']").First.ClickAsync();

        Assert.StartsWith("#step-", await pack.Page.EvaluateAsync<string>("() => location.hash"), StringComparison.Ordinal);
        Assert.True(await pack.Page.EvaluateAsync<bool>(
            "() => document.querySelector(location.hash).getBoundingClientRect().top >= document.querySelector('.top').getBoundingClientRect().bottom"));
    }

    [Fact]
    public async Task What_stands_in_a_step_is_found_by_its_words_whatever_their_order_and_capitals()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Evaporator));
        var step = SamplePlan.Steps(SamplePlan.Evaporator).First(step => step.Item == "evap_unions");
        var words = step.Text.Split(' ').Reverse().Select(word => word.ToUpperInvariant());

        await pack.Page.Locator("[data-do=find]").FillAsync(string.Join(' ', words));

        Assert.Contains($"#step-{step.Number}", await pack.Page.Locator(".found a").EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href'))"));
        await pack.Page.Locator("[data-do=find]").FillAsync("no card says this");
        Assert.Equal("0 places", await pack.Page.Locator(".counted").InnerTextAsync());
        Assert.Equal(0, await pack.Page.Locator(".found a").CountAsync());
        Assert.Empty(pack.Complaints);
    }

    [Theory]
    [InlineData(1600)]
    [InlineData(360)]
    public async Task The_list_of_cards_stays_in_sight_and_leads_to_each(int width)
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Evaporator), new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 800 } });
        await pack.Page.EvaluateAsync("() => window.scrollTo(0, 5000)");
        var link = pack.Page.Locator(".cards a[href='#close-out']");
        if (!await link.IsVisibleAsync())
        {
            await pack.Page.Locator(".cards summary").ClickAsync();
        }

        await link.ClickAsync();

        Assert.Equal("#close-out", await pack.Page.EvaluateAsync<string>("() => location.hash"));
        Assert.Equal(width > 1000, await link.IsVisibleAsync());
    }

    [Fact]
    public async Task Without_the_script_the_list_of_cards_leads_on_and_nothing_offers_what_it_cannot_do()
    {
        await using var pack = await OpenPack.AtAsync(
            chromium, Write(SamplePlan.Brief), new BrowserNewContextOptions { JavaScriptEnabled = false, ViewportSize = new ViewportSize { Width = 800, Height = 700 } });

        Assert.False(await pack.Page.Locator(".find").IsVisibleAsync());
        Assert.Equal(0, await pack.Page.Locator("main input[type=file]").CountAsync());
        await pack.Page.Locator(".cards summary").ClickAsync();
        Assert.True(await pack.Page.Locator(".cards a[href='#close-out']").IsVisibleAsync());
    }

    private string Write(Plan plan) => chromium.Write(WorkPack.Html(plan, PackTemplates.Standard).Text);
}
