using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>Packs take as few sheets as their cards fill, and nothing is torn apart for that.</summary>
[Slow]
public sealed class SheetTests(ChromiumFixture chromium)
{
    private const double AThird = 1.0 / 3;

    [Theory]
    [InlineData("replace_evaporator", 14)]
    [InlineData("replace_hub_motor-left", 8)]
    [InlineData("renew_element_gasket", 7)]
    [InlineData("traction_off", 3)]
    public async Task A_pack_takes_few_sheets_on_either_paper(string job, int most)
    {
        string[] papers = ["A4", "Letter"];
        foreach (var (paper, sheets) in papers.Zip(await ReadAsync(job, papers)))
        {
            WhollyPrinted(sheets, $"{job} on {paper}");
            Assert.True(sheets.Filled.Count <= most, $"{job} takes {sheets.Filled.Count} sheets of {paper}, not {most}");
        }
    }

    [Theory]
    [InlineData("replace_drive_unit", "A4")]
    [InlineData("renew_group_gasket-left", "Letter")]
    [InlineData("seat_out", "A4")]
    [InlineData("reseal_caliper-right", "Letter")]
    public async Task Nothing_is_split_or_left_behind(string job, string paper) =>
        WhollyPrinted((await ReadAsync(job, paper))[0], $"{job} on {paper}");

    [Fact]
    public async Task Each_card_begins_a_sheet_where_that_is_chosen()
    {
        var plan = DemoLibrary.Plans["seat_out"];

        var flowing = (await ReadAsync("seat_out", "A4"))[0];
        var apart = (await PrintedSheets.ReadAsync(chromium, WorkPack.Html(plan, PackTemplates.Standard, CardLayout.Card).Text, "A4"))[0];

        // Cover, lists, making safe, and the close-out stand on sheets of their own as well.
        Assert.True(apart.Filled.Count >= plan.Strip.Length + plan.Refit.Length + 4, $"{apart.Filled.Count} sheets");
        Assert.True(flowing.Filled.Count * 2 <= apart.Filled.Count, $"{flowing.Filled.Count} sheets instead of {apart.Filled.Count}");
    }

    [Fact]
    public async Task What_is_torn_apart_is_found()
    {
        var careless = WorkPack.Html(DemoLibrary.Plans["replace_evaporator"], PackTemplates.Standard).Text
            .Replace("break-inside: avoid", "break-inside: auto", StringComparison.Ordinal)
            .Replace("break-after: avoid", "break-after: auto", StringComparison.Ordinal)
            .Replace("break-before: avoid", "break-before: auto", StringComparison.Ordinal);

        // Where a sheet ends by chance between two rows, the other paper ends it elsewhere.
        var sheets = await PrintedSheets.ReadAsync(chromium, careless, "A4", "Letter");

        Assert.NotEmpty(sheets.SelectMany(paper => paper.Split));
        Assert.NotEmpty(sheets.SelectMany(paper => paper.Stranded));
    }

    private static void WhollyPrinted(PrintedSheets sheets, string what)
    {
        Assert.True(sheets.Split.Count == 0, $"{what}: split over sheets: {string.Join("; ", sheets.Split)}");
        Assert.True(sheets.Stranded.Count == 0, $"{what}: left behind: {string.Join("; ", sheets.Stranded)}");
        var thin = sheets.Filled.SkipLast(1).Select((share, at) => (share, Sheet: at + 1)).Where(one => one.share < AThird).Select(one => one.Sheet);
        Assert.True(!thin.Any(), $"{what}: sheets under a third full: {string.Join(", ", thin)} of {sheets.Filled.Count}");
    }

    private Task<IReadOnlyList<PrintedSheets>> ReadAsync(string job, params string[] papers) =>
        PrintedSheets.ReadAsync(chromium, WorkPack.Html(DemoLibrary.Plans[job], PackTemplates.Standard).Text, papers);
}
