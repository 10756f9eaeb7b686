using System.Globalization;
using Microsoft.Playwright;
using ProcScript.Analysis.Reaching;
using ProcScript.Cards.Maps;

namespace ProcScript.Browser.Tests;

/// <summary>The page of <c>map</c>, with as many parts as a whole tractor has.</summary>
public sealed class MapOfAMachine(ChromiumFixture chromium)
{
    private const int Layers = 20;
    private const int Width = 100;

    private static readonly MachineMap Large = new()
    {
        Machine = "rig",
        Title = "Rig",
        Parts = [.. Enumerable.Range(0, Layers * Width).Select(part => new MappedPart(Name(part), Title(part), part / Width, "", part < Width ? "free" : "fitted", ["2 × bolt"]))],
        Edges = [.. Enumerable.Range(0, (Layers - 1) * Width).Select(part => new MappedEdge(Name(part), Name(part + Width), part % 7 == 0))],
    };

    [Fact]
    public async Task Of_two_thousand_parts_one_is_found_by_the_keyboard_and_shows_what_it_has_to_do_with()
    {
        var page = await chromium.NewPageAsync();
        var errors = new List<string>();
        page.PageError += (_, error) => errors.Add(error);
        page.Console += (_, message) => errors.AddRange(message.Type == "error" ? [message.Text] : []);
        await page.SetContentAsync(MachineMapPage.Html(Large));

        // What is drawn can be read as it comes, and nothing of the long list is open.
        Assert.True(await page.EvaluateAsync<double>("document.querySelector('svg a text').getBoundingClientRect().height") >= 8);
        Assert.Equal(0, await page.Locator("details[open]").CountAsync());

        await page.GetByLabel("Find a part").FillAsync("part 1234");
        await page.Keyboard.PressAsync("Enter");

        Assert.Equal("1 of 1: part 1234 p1234", await page.Locator("output").TextContentAsync());
        Assert.True(await page.Locator("section#part-p1234").IsVisibleAsync());
        Assert.Equal(1, await page.Locator("section:visible").CountAsync());
        Assert.Equal(2, await page.Locator("svg path.drawn").CountAsync());
        Assert.True(await page.EvaluateAsync<bool>("""
            (() => {
              const frame = document.querySelector('.wide').getBoundingClientRect(), box = document.querySelector('svg .chosen').getBoundingClientRect();
              return box.left >= frame.left && box.right <= frame.right;
            })()
            """));

        await page.Keyboard.PressAsync("Escape");
        Assert.Equal("", await page.Locator("output").TextContentAsync());
        Assert.Equal(0, await page.Locator("section[hidden]").CountAsync());

        await page.GetByRole(AriaRole.Button, new() { Name = "Whole width" }).ClickAsync();
        Assert.True(await page.EvaluateAsync<bool>("document.querySelector('.wide').scrollWidth <= document.querySelector('.wide').clientWidth + 2"));
        Assert.Empty(errors);
    }

    [Fact]
    public async Task Whoever_hears_the_page_or_works_it_by_keys_is_served()
    {
        var page = await chromium.NewPageAsync();
        await page.SetContentAsync(MachineMapPage.Html(Large with
        {
            Parts = [.. Large.Parts.Where((_, part) => part % Width < 4)],
            Edges = [.. Large.Edges.Where((_, edge) => edge % Width < 4)],
        }));

        Assert.Equal(Layers, await page.Locator("details[open]").CountAsync());
        Assert.Empty(await AccessibilityCheck.CheckAsync(page));
    }

    private static string Name(int part) => string.Create(CultureInfo.InvariantCulture, $"p{part}");

    private static string Title(int part) => string.Create(CultureInfo.InvariantCulture, $"part {part}");
}
