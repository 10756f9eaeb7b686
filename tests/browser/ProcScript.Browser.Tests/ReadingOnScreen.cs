using System.Collections.Concurrent;
using Microsoft.Playwright;
using ProcScript.Cards;
using ProcScript.Cards.Tests;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>The pack asks for nothing, says everything without its script, and can be read by everybody.</summary>
public sealed class ReadingOnScreen(ChromiumFixture chromium)
{
    private static readonly string Html = WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text;

    [Fact]
    public async Task Nothing_is_asked_for_and_no_script_fails()
    {
        var address = chromium.Write(Html);
        await using var pack = await OpenPack.AtAsync(chromium, address);

        await pack.Page.Locator("input.main").First.CheckAsync();

        Assert.Equal([address], pack.Requests);
        Assert.Empty(pack.Complaints);
        Assert.Empty(pack.Dialogs);
    }

    [Theory]
    [InlineData("\"><img src=x onerror=alert(1)><script>alert(2)</script>")]
    [InlineData("</style></script><script>alert(3)</script><a href=\"javascript:alert(4)\" onfocus=alert(5) autofocus>x</a>")]
    [InlineData("[x](javascript:alert(6)) ![x](http://e.example/x.png) <iframe src=http://e.example/></iframe>")]
    public async Task A_hostile_text_in_every_place_starts_nothing_and_asks_for_nothing(string text)
    {
        var address = chromium.Write(WorkPack.Html(HostilePlan.Fill(() => text), PackTemplates.Standard).Text);
        await using var pack = await OpenPack.AtAsync(chromium, address);

        await pack.Page.Locator("input.main").First.CheckAsync();
        await pack.Page.ReloadAsync();

        Assert.True(await pack.Page.Locator("input.main").First.IsCheckedAsync(), await pack.KeptAsync());
        Assert.All(pack.Requests, request => Assert.Equal(address, request));
        Assert.Empty(pack.Complaints);
        Assert.Empty(pack.Dialogs);
    }

    [Fact]
    public async Task Every_step_can_be_read_without_the_script()
    {
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(Html), new BrowserNewContextOptions { JavaScriptEnabled = false });

        foreach (var step in SamplePlan.Steps(SamplePlan.Evaporator))
        {
            var row = pack.Page.Locator($"#step-{step.Number}");
            Assert.True(await row.GetByText(SamplePlan.Uncounted(step.Text, step.Count), new LocatorGetByTextOptions { Exact = true }).IsVisibleAsync(), step.Text);
        }

        Assert.False(await pack.Page.Locator(".tools").IsVisibleAsync());
        Assert.False(await pack.Page.Locator(".bar").IsVisibleAsync());
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280)]
    [InlineData(ColorScheme.Dark, 1600)]
    [InlineData(ColorScheme.Dark, 320)]
    public async Task Axe_finds_nothing(ColorScheme scheme, int width)
    {
        await using var pack = await OpenPack.AtAsync(
            chromium,
            chromium.Write(WorkPack.Html(SamplePlan.Brief, PackTemplates.Standard).Text),
            new BrowserNewContextOptions { ColorScheme = scheme, ViewportSize = new ViewportSize { Width = width, Height = 900 } });
        await pack.Page.Locator("[data-do=find]").FillAsync("lever");

        Assert.Empty(await AccessibilityCheck.CheckAsync(pack.Page));
    }

    /// <summary>Every demo pack, in turn on a wide and a narrow, a light and a dark page.</summary>
    [Slow]
    [Fact]
    public async Task Axe_finds_nothing_on_demo_packs()
    {
        (ColorScheme Scheme, int Width)[] pages = [(ColorScheme.Light, 1600), (ColorScheme.Dark, 320), (ColorScheme.Light, 640), (ColorScheme.Dark, 1280)];
        ConcurrentBag<string> found = [];
        var jobs = DemoLibrary.Plans.Keys.Order(StringComparer.Ordinal).Select((job, at) => (job, at));
        await Parallel.ForEachAsync(jobs, new ParallelOptions { MaxDegreeOfParallelism = 2 }, async (one, _) =>
        {
            var (scheme, width) = pages[one.at % pages.Length];
            await using var pack = await OpenPack.AtAsync(
                chromium,
                chromium.Write(WorkPack.Html(DemoLibrary.Plans[one.job], PackTemplates.Standard).Text),
                new BrowserNewContextOptions { ColorScheme = scheme, ViewportSize = new ViewportSize { Width = width, Height = 900 } });

            foreach (var finding in await AccessibilityCheck.CheckAsync(pack.Page))
            {
                found.Add($"{one.job}, {scheme}, {width}: {finding}");
            }
        });

        Assert.Empty(found);
    }

    [Fact]
    public async Task The_question_which_record_to_continue_can_be_read_reached_and_left_by_everybody()
    {
        var address = chromium.Write(WorkPack.Html(SamplePlan.Brief, PackTemplates.Standard).Text);
        await using var first = await OpenPack.AtAsync(chromium, address, new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 320, Height = 700 } });
        await first.Field("serial").FillAsync("K-1");

        var page = await first.AnotherTabAsync(address);

        Assert.StartsWith("Continue: serial K-1", await page.EvaluateAsync<string>("() => document.activeElement.getAttribute('aria-label')"), StringComparison.Ordinal);
        Assert.DoesNotContain(await AccessibilityCheck.CheckAsync(page), finding => finding.IsSerious);
        var small = await page.EvaluateAsync<string[]>(
            """
            () => Array.from(document.querySelectorAll("dialog button, dialog input"))
              .filter(control => control.getBoundingClientRect().height < 44 || control.getBoundingClientRect().right > 320)
              .map(control => control.outerHTML.slice(0, 160))
            """);
        Assert.Empty(small);
        await page.Keyboard.PressAsync("Enter");
        Assert.False(await page.Locator("dialog").IsVisibleAsync());
        Assert.Equal("K-1", await page.Locator("[data-field=serial]").InputValueAsync());
    }

    /// <summary>A window of 1280 pixels shows this much at 200 % and at 400 %.</summary>
    [Theory]
    [InlineData(640)]
    [InlineData(320)]
    public async Task Nothing_needs_sideways_scrolling_when_enlarged(int width)
    {
        await using var pack = await OpenPack.AtAsync(
            chromium,
            chromium.Write(Html),
            new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 700 } });
        await pack.Field("serial").FillAsync("K-1 of the second delivery, with the long chassis number");

        var widest = await pack.Page.EvaluateAsync<string>(
            """
            width => {
              // The map is a drawing: it scrolls inside its own region.
              const wide = Array.from(document.querySelectorAll("body *")).filter(e => !e.closest(".drawing, .hide, .skip, thead") && e.getBoundingClientRect().right > width + .5);
              return wide.length === 0 ? "" : wide[0].outerHTML.slice(0, 200);
            }
            """,
            width);

        // A cell that is put into the column of the numbers breaks its words letter by letter.
        var squeezed = await pack.Page.EvaluateAsync<string[]>(
            """
            () => Array.from(document.querySelectorAll("main :is(p, li, td, th, h2)"))
              .filter(text => !text.closest(".hide, thead th, svg") && text.textContent.trim().length > 20 && text.clientWidth > 1 && text.clientWidth < 60)
              .map(text => text.outerHTML.slice(0, 160))
            """);

        Assert.Empty(squeezed);
        Assert.Equal("", widest);
        Assert.Equal(width, await pack.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(320)]
    public async Task A_gloved_finger_hits_every_control(int width)
    {
        await using var pack = await OpenPack.AtAsync(
            chromium,
            chromium.Write(Html),
            new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 900 } });

        await pack.Page.Locator("summary").ClickAsync();

        // 44 CSS pixels in each direction: the point 21 pixels off the middle still belongs to the control or its label.
        var missed = await pack.Page.EvaluateAsync<string[]>(
            """
            () => Array.from(document.querySelectorAll("main input, button, summary, .cards a, .tools input")).filter(control => {
              control.scrollIntoView({ block: "center" });
              const box = control.getBoundingClientRect();
              const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
              const belongs = hit => hit !== null && (hit === control || control.contains(hit) || (hit.closest("label")?.contains(control) ?? false));
              const across = control.type === "checkbox" ? 21 : Math.min(21, box.width / 2 - 1);
              return ![[-across, 0], [across, 0], [0, -21], [0, 21]].every(([dx, dy]) => belongs(document.elementFromPoint(x + dx, y + dy)));
            }).map(control => control.outerHTML.slice(0, 160))
            """);

        Assert.Empty(missed);
    }

    [Fact]
    public async Task The_focus_never_hides_under_the_bar()
    {
        await using var pack = await OpenPack.AtAsync(
            chromium,
            chromium.Write(Html),
            new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 800, Height = 420 } });

        // Each control in turn, forwards and back, as the Tab key would take it; the browser scrolls it into view by itself.
        var hidden = await pack.Page.EvaluateAsync<string[]>(
            """
            () => {
              const bar = document.querySelector(".bar");
              const controls = Array.from(document.querySelectorAll("main a[href], main input, main [tabindex]"));
              return [...controls, ...controls.toReversed()].filter(control => {
                control.focus();
                const [box, over] = [control.getBoundingClientRect(), bar.getBoundingClientRect()];
                return control !== document.activeElement || (box.top < over.bottom - 1 && box.bottom > over.top + 1);
              }).map(control => control.outerHTML.slice(0, 160));
            }
            """);

        Assert.Empty(hidden);
        Assert.True(await pack.Page.EvaluateAsync<bool>("() => window.scrollY > 0 && document.querySelector('.bar').getBoundingClientRect().top === 0"));
    }

    [Fact]
    public async Task An_alert_is_told_by_word_border_and_symbol_and_stands_before_its_action()
    {
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(Html));

        foreach (var step in SamplePlan.Steps(SamplePlan.Evaporator).Where(step => step.Alerts.Length > 0))
        {
            var rows = pack.Page.Locator($"#step-{step.Number} > tr");
            Assert.Equal(2, await rows.CountAsync());
            Assert.Equal(step.Alerts.Length, await rows.Nth(0).Locator(".alert").CountAsync());
        }

        foreach (var word in new[] { "danger", "warning", "caution", "notice" })
        {
            var alert = pack.Page.Locator($".alert.{word}").First;
            Assert.StartsWith(word.ToUpperInvariant(), (await alert.InnerTextAsync()).Trim(), StringComparison.Ordinal);
            Assert.Equal(word == "notice" ? 0 : 1, await alert.Locator("svg").CountAsync());
            Assert.Equal("2px", await alert.EvaluateAsync<string>("alert => getComputedStyle(alert).borderTopWidth"));
        }
    }
}
