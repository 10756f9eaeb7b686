using System.Globalization;
using Microsoft.Playwright;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>One file prints on both papers with every step whole, its alert with it, and every page saying what it is.</summary>
public sealed class Printing(ChromiumFixture chromium, PrintedPacks printed) : IClassFixture<PrintedPacks>
{
    // The page margins of the style sheet: 8 mm at the sides, 9 mm at the top.
    private const double SideMargin = 8 / 25.4 * 72;
    private const double TopMargin = 9 / 25.4 * 72;

    [Theory]
    [InlineData("A4", false, 210, 297)]
    [InlineData("Letter", false, 215.9, 279.4)]
    [InlineData("A4", true, 210, 297)]
    public async Task No_step_is_split_and_no_alert_or_head_is_left_behind(string paper, bool apart, double width, double height)
    {
        var plan = SamplePlan.Marked;

        var pages = await PrintAsync(plan, paper, apart);

        Assert.All(pages, page => Assert.Equal((width, height), (page.Width / 72 * 25.4, page.Height / 72 * 25.4), WithinHalfAMillimetre));
        foreach (var step in SamplePlan.Steps(plan))
        {
            var marks = SamplePlan.Marks(step);
            var holding = pages.Where(page => page.Words.Any(word => marks.Contains(word.Text))).ToList();
            var page = Assert.Single(holding);
            Assert.Equal(marks, PrintedPage.ByLine(page.Words.Where(word => marks.Contains(word.Text))).Select(word => word.Text));
        }

        Assert.All(pages, page => Assert.All(TableHeads(page), head => Assert.Contains(page.Words, word => (IsStepText(word) || word.Text == "Return") && word.Top > head.Bottom)));
    }

    [Slow]
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task Every_word_lies_within_the_margins(string paper)
    {
        var pages = await PrintAsync(SamplePlan.Marked, paper);

        var outside = pages.SelectMany(page => page.Words
            .Where(word => word.Left < SideMargin - 1 || word.Right > page.Width - SideMargin + 1 || word.Top < 0 || word.Bottom > page.Height)
            .Select(word => $"page {page.Number}: {word.Text}"));
        Assert.Empty(outside);
    }

    [Fact]
    public async Task Every_page_carries_the_job_the_revision_and_its_number()
    {
        var pages = await PrintAsync(SamplePlan.Evaporator, "A4");

        Assert.All(pages, page =>
        {
            Assert.Contains("replace_evaporator · revision 4f7a91c2d0e3", page.Text, StringComparison.Ordinal);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"Page {page.Number} of {pages.Count}"), page.Text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public async Task Every_stage_starts_a_page_and_repeats_its_title_and_table_head()
    {
        var plan = SamplePlan.Marked;

        var pages = await PrintAsync(plan, "A4", apart: true);

        for (var i = 0; i < plan.Strip.Length; i++)
        {
            var head = string.Create(CultureInfo.InvariantCulture, $"Strip {i + 1} of {plan.Strip.Length}: {plan.Strip[i].Title}");
            var own = pages.Where(page => RunningHead(page).Contains(head, StringComparison.Ordinal)).ToList();
            Assert.All(own, page => Assert.Contains(TableHeads(page), head => page.Words.Where(IsStepText).All(word => word.Top > head.Bottom)));
            var steps = plan.Strip[i].Steps;
            Assert.All(steps, step => Assert.Contains(own, page => page.Text.Contains(SamplePlan.Marks(step)[0], StringComparison.Ordinal)));
        }

        var longest = pages.Count(page => RunningHead(page).Contains("Strip 1 of", StringComparison.Ordinal));
        Assert.True(longest >= 2, $"The long stage took {longest} pages, too few to show a repeated head.");
    }

    [Slow]
    [Fact]
    public async Task Sign_off_stays_in_one_piece_however_long_the_cover_is()
    {
        var pagesOfSignOff = new List<int>();
        foreach (var goals in new[] { 1, 25, 45, 65 })
        {
            var plan = SamplePlan.Brief with { Goals = [.. Enumerable.Range(1, goals).Select(i => string.Create(CultureInfo.InvariantCulture, $"Replace the bracket of row {i}"))] };

            var pages = await PrintAsync(plan, "A4");

            var page = Assert.Single(pages, page => page.Text.Contains("sign-off", StringComparison.Ordinal));
            Assert.Contains("Serial number", page.Text, StringComparison.Ordinal);
            Assert.Contains("Checked by", page.Text, StringComparison.Ordinal);
            pagesOfSignOff.Add(page.Number);
        }

        Assert.Equal([1, 2], pagesOfSignOff.Distinct());
    }

    [Fact]
    public async Task Cards_flow_unless_each_is_to_have_its_sheets()
    {
        var apart = await PrintAsync(SamplePlan.Marked, "A4", apart: true);
        var flowing = await PrintAsync(SamplePlan.Marked, "A4");

        Assert.True(flowing.Count + 3 < apart.Count, $"{flowing.Count} pages instead of {apart.Count}");
        Assert.All(flowing, page => Assert.Contains("replace_evaporator · revision 4f7a91c2d0e3", page.Text, StringComparison.Ordinal));
    }

    [Slow]
    [Theory]
    [InlineData(CardLayout.Flow)]
    [InlineData(CardLayout.Card)]
    public async Task What_is_chosen_on_the_screen_prints_as_what_is_built(CardLayout other)
    {
        var built = other == CardLayout.Flow ? CardLayout.Card : CardLayout.Flow;
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(WorkPack.Html(SamplePlan.Marked, PackTemplates.Standard, built).Text));
        var choice = pack.Page.Locator("[data-do=apart]");
        Assert.Equal(built == CardLayout.Card, await choice.IsCheckedAsync());

        await choice.SetCheckedAsync(other == CardLayout.Card);

        var pages = await PrintedPage.ReadAsync(await pack.Page.PdfAsync(new PagePdfOptions { Format = "A4" }));
        Assert.Equal((await PrintAsync(SamplePlan.Marked, "A4", other == CardLayout.Card)).Select(page => page.Text), pages.Select(page => page.Text));
    }

    [Fact]
    public async Task Dark_mode_stays_on_the_screen()
    {
        await using var pack = await OpenPack.AtAsync(
            chromium,
            chromium.Write(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text),
            new BrowserNewContextOptions { ColorScheme = ColorScheme.Dark });
        const string Ground = "() => getComputedStyle(document.documentElement).backgroundColor";
        Assert.NotEqual("rgb(255, 255, 255)", await pack.Page.EvaluateAsync<string>(Ground));

        await pack.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        Assert.Equal("rgb(255, 255, 255)", await pack.Page.EvaluateAsync<string>(Ground));
    }

    [Theory]
    [InlineData("print-filled", true)]
    [InlineData("print-blank", false)]
    public async Task Ticks_and_readings_print_or_stay_blank_as_chosen(string choice, bool shown)
    {
        await using var pack = await OpenPack.AtAsync(
            chromium,
            chromium.Write(WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text),
            before: "window.print = () => { window.printed = true; };");
        await pack.Field("step-1").CheckAsync();
        await pack.Field("step-3-reading").FillAsync("0.125");

        await pack.Page.Locator($"[data-do={choice}]").ClickAsync();

        Assert.True(await pack.Page.EvaluateAsync<bool>("() => window.printed"));
        await pack.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        // A tick is drawn with two borders of a box that is not there where the pack prints blank.
        Assert.Equal(shown, await pack.Field("step-1").EvaluateAsync<bool>("box => getComputedStyle(box, '::before').content !== 'none'"));
        Assert.Equal(
            shown ? "rgb(20, 23, 26)" : "rgba(0, 0, 0, 0)",
            await pack.Field("step-3-reading").EvaluateAsync<string>("field => getComputedStyle(field).color"));
    }

    /// <summary>A pack is printed once for all tests that look at it.</summary>
    private Task<IReadOnlyList<PrintedPage>> PrintAsync(Plan plan, string paper, bool apart = false) =>
        printed.GetAsync((plan, paper, apart), () => PrintAnewAsync(plan, paper, apart));

    private async Task<IReadOnlyList<PrintedPage>> PrintAnewAsync(Plan plan, string paper, bool apart)
    {
        var layout = apart ? CardLayout.Card : CardLayout.Flow;
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(WorkPack.Html(plan, PackTemplates.Standard, layout).Text));
        var pdf = await pack.Page.PdfAsync(new PagePdfOptions { Format = paper });
        return await PrintedPage.ReadAsync(pdf);
    }

    private static bool WithinHalfAMillimetre((double Width, double Height) expected, (double Width, double Height) actual) =>
        Math.Abs(expected.Width - actual.Width) < 0.5 && Math.Abs(expected.Height - actual.Height) < 0.5;

    /// <summary>The words above the page area.</summary>
    private static string RunningHead(PrintedPage page) =>
        string.Join(' ', page.Words.Where(word => word.Bottom < TopMargin).Select(word => word.Text));

    /// <summary>The heads of the step tables: the last of their words, over the boxes at the right edge.</summary>
    private static IEnumerable<PrintedWord> TableHeads(PrintedPage page) =>
        page.Words.Where(word => word.Text == "Done" && word.Right > page.Width - SideMargin - (15 / 25.4 * 72)
            && !page.Words.Any(other => other.Text == "Signature" && Math.Abs(other.Bottom - word.Bottom) < 2));

    private static bool IsStepText(PrintedWord word) => word.Text.StartsWith('s') && word.Text.EndsWith("text", StringComparison.Ordinal);
}
