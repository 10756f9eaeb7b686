using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Cards.Labels;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>A pack with open questions says so everywhere, to everybody.</summary>
public sealed class Drafts(ChromiumFixture chromium)
{
    private static readonly Plan Draft = SamplePlan.Brief with
    {
        Questions =
        [
            new PlanQuestion("is the mat behind the seat?", new PlanSource("cab/cab.proc", 12, 5), 3),
            new PlanQuestion("how many, and of a very long sort that nobody has a word for?", new PlanSource("cab/a-very-long-name-of-a-file-of-procedures.proc", 140, 1), 0),
        ],
    };

    [Theory]
    [InlineData(320)]
    [InlineData(1280)]
    public async Task Every_card_says_it_on_a_screen_and_axe_finds_nothing(int width)
    {
        await using var pack = await OpenPack.AtAsync(
            chromium,
            chromium.Write(WorkPack.Html(Draft, PackTemplates.Standard).Text),
            new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 900 } });

        var silent = await pack.Page.EvaluateAsync<string[]>(
            """
            () => Array.from(document.querySelectorAll(".card"))
              .filter(card => !Array.from(card.querySelectorAll(".draft")).some(line => line.getClientRects().length > 0 && line.getBoundingClientRect().width > 100))
              .map(card => card.id)
            """);

        Assert.Empty(silent);
        Assert.Empty(await AccessibilityCheck.CheckAsync(pack.Page));
        Assert.Equal(width, await pack.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
    }

    [Fact]
    public async Task A_question_tells_its_place_and_leads_to_its_step()
    {
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(WorkPack.Html(Draft, PackTemplates.Standard).Text));
        var questions = pack.Page.Locator(".open-questions li");

        Assert.Equal("is the mat behind the seat? cab/cab.proc:12 · Step 3", await questions.First.InnerTextAsync());
        Assert.EndsWith("procedures.proc:140", await questions.Last.InnerTextAsync(), StringComparison.Ordinal);
        await questions.First.GetByRole(AriaRole.Link).ClickAsync();
        await Assertions.Expect(pack.Page).ToHaveURLAsync(new Regex("#step-3$"));
    }

    [Fact]
    public async Task Axe_finds_nothing_on_its_labels_and_each_says_it()
    {
        var sheet = LabelSheet.Of(LabelStock.A4Of24)!;
        await using var labels = await OpenPack.AtAsync(chromium, chromium.Write(WorkPack.Labels(Draft, PackTemplates.Standard, sheet).Text));

        Assert.Empty(await AccessibilityCheck.CheckAsync(labels.Page));
        Assert.Equal(await labels.Page.Locator(".label").CountAsync(), await labels.Page.Locator(".label h2", new PageLocatorOptions { HasText = "DRAFT" }).CountAsync());
        Assert.NotEqual(0, await labels.Page.Locator(".label").CountAsync());
    }

    [Fact]
    public async Task A_part_of_the_map_leads_to_its_step()
    {
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text));
        var part = pack.Page.Locator("#map svg a").First;
        var leads = await part.GetAttributeAsync("href");

        await part.ClickAsync();

        await Assertions.Expect(pack.Page).ToHaveURLAsync(new Regex(Regex.Escape(leads!) + "$"));
        Assert.Equal(1, await pack.Page.Locator(leads!).CountAsync());
    }
}
