using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ProcScript.Browser.Tests;

/// <summary>How a pack lies on its sheets, read from the words of the printed pages.</summary>
/// <param name="Filled">Of each sheet, the share of its height down to the last word.</param>
/// <param name="Split">The rows, alerts and lists that lie on more than one sheet, by their first words.</param>
/// <param name="Stranded">The headings, table heads and alerts that lie on another sheet than what they announce.</param>
internal sealed partial record PrintedSheets(IReadOnlyList<double> Filled, IReadOnlyList<string> Split, IReadOnlyList<string> Stranded)
{
    // The page margins of the style sheet.
    private const double Top = 9 / 25.4 * 72;
    private const double Bottom = 9 / 25.4 * 72;

    private static readonly Lazy<string> Probes = new(() => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "SheetProbes.js")));

    /// <summary>Prints a pack on one paper after the other and reads the sheets of each.</summary>
    public static async Task<IReadOnlyList<PrintedSheets>> ReadAsync(ChromiumFixture chromium, string html, params string[] papers)
    {
        // The policy of the page knows its own style by its hash; a test may print another.
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(html), new BrowserNewContextOptions { BypassCSP = true });
        await pack.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        var marked = await pack.Page.EvaluateAsync<Marked>(Probes.Value);
        List<PrintedSheets> read = [];
        foreach (var paper in papers)
        {
            read.Add(Read(marked, await PrintedPage.ReadAsync(await pack.Page.PdfAsync(new PagePdfOptions { Format = paper }))));
        }

        return read;
    }

    private static PrintedSheets Read(Marked marked, IReadOnlyList<PrintedPage> pages)
    {
        Dictionary<(char Sort, int At), List<(char Side, int Page)>> found = [];
        foreach (var page in pages)
        {
            foreach (Match match in page.Words.SelectMany(word => Mark().Matches(word.Text)))
            {
                var key = (match.Groups[1].Value[0], int.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture));
                found.TryAdd(key, []);
                found[key].Add((match.Groups[3].Value[0], page.Number));
            }
        }

        // What is never found again would be judged by nothing.
        Assert.All(Enumerable.Range(0, marked.Rows.Length), row => Assert.True(found.ContainsKey(('r', row)), $"no mark of \"{marked.Rows[row]}\""));
        return new PrintedSheets(
            [.. pages.Select(Share)],
            [.. found.Where(one => one.Key.Sort == 'r' && one.Value.Select(mark => mark.Page).Distinct().Count() > 1).Select(one => marked.Rows[one.Key.At])],
            [.. found.Where(one => one.Key.Sort == 'h' && IsStranded(one.Value)).Select(one => marked.Heads[one.Key.At])]);
    }

    /// <summary>A table head comes again on every sheet; its first place is what counts, and each that bears it has a row below.</summary>
    private static bool IsStranded(List<(char Side, int Page)> marks) =>
        marks.Exists(mark => mark.Side == 'z')
        && marks.Where(mark => mark.Side == 'a').Select(mark => mark.Page).DefaultIfEmpty(0).Min() != marks.Where(mark => mark.Side == 'z').Min(mark => mark.Page);

    private static double Share(PrintedPage page)
    {
        var (from, to) = (Top, page.Height - Bottom);
        var last = page.Words.Where(word => word.Top >= from - 1 && word.Bottom <= to + 1).Select(word => word.Bottom).DefaultIfEmpty(from).Max();
        return (last - from) / (to - from);
    }

    [GeneratedRegex("(?<![A-Za-z0-9])([rh])([0-9]+)([az])")]
    private static partial Regex Mark();

    private sealed class Marked
    {
        public string[] Rows { get; set; } = [];

        public string[] Heads { get; set; } = [];
    }
}
