using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Cards.Labels;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>Labels print where the sheet has them, within half a millimetre, and none loses a word over its edge.</summary>
public sealed partial class LabelPrinting(ChromiumFixture chromium)
{
    private const double Tolerance = 0.5;

    /// <summary>Ten dots to the millimetre.</summary>
    private const int DotsPerInch = 254;

    public static TheoryData<LabelStock> Stocks => [.. LabelSheet.All.Select(sheet => sheet.Stock)];

    [Theory]
    [MemberData(nameof(Stocks))]
    public async Task Boxes_are_where_the_sheet_has_its_labels(LabelStock stock)
    {
        var sheet = LabelSheet.Of(stock)!;
        var plan = Bagged(sheet.Count + 1);
        // The edges of the boxes are drawn for the measurement alone, and nothing else is.
        var html = Policy().Replace(WorkPack.Labels(plan, PackTemplates.Standard, sheet).Text, "")
            .Replace("</style>", ".label { outline: .2mm solid #000; outline-offset: -.2mm } .label * { visibility: hidden }</style>", StringComparison.Ordinal);

        var pages = await DotsAsync(html);

        Assert.Equal(2, pages.Count);
        Assert.All(pages, page => Assert.Equal((sheet.PageWidth, sheet.PageHeight), (page.Width, page.Height), WithinTheTolerance));
        for (var at = 0; at <= sheet.Count; at++)
        {
            var (left, top) = (sheet.Left + (at % sheet.Count % sheet.Columns * sheet.PitchX), sheet.Top + (at % sheet.Count / sheet.Columns * sheet.PitchY));
            var page = pages[at / sheet.Count];
            // The first and last dark dot on the way across and down the middle of the label.
            var across = page.Across(top + (sheet.Height / 2), left - Tolerance, left + sheet.Width + Tolerance);
            var down = page.Down(left + (sheet.Width / 2), top - Tolerance, top + sheet.Height + Tolerance);
            Assert.InRange(across.First, left - Tolerance, left + Tolerance);
            Assert.InRange(across.Last, left + sheet.Width - Tolerance, left + sheet.Width + Tolerance);
            Assert.InRange(down.First, top - Tolerance, top + Tolerance);
            Assert.InRange(down.Last, top + sheet.Height - Tolerance, top + sheet.Height + Tolerance);
        }
    }

    [Theory]
    [MemberData(nameof(Stocks))]
    public async Task Every_word_lies_on_its_label(LabelStock stock)
    {
        var sheet = LabelSheet.Of(stock)!;
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(WorkPack.Labels(Bagged(7), PackTemplates.Standard, sheet).Text));
        await pack.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        var cut = await pack.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('.label ul, .label')].filter(box => box.scrollHeight > box.clientHeight + 1).map(box => box.textContent)");

        Assert.Empty(cut);
        Assert.Empty(pack.Complaints);
    }

    /// <summary>A plan with so many bags, some with more in them than a label has room for.</summary>
    private static Plan Bagged(int count) => SamplePlan.Evaporator with
    {
        Bags =
        [
            .. Enumerable.Range(1, count).Select(bag => new PlanBag(
                bag,
                "Seat and console, left side",
                [.. Enumerable.Range(1, count > 7 ? 1 : bag * 2).Select(line => new PlanBagLine("M10 × 30 flange bolt with washer", line, "seat frame, two front and two rear", line, 90 - line))],
                89,
                bag == 2 ? "Console" : "")
            {
                Side = bag == 3 ? "left" : "",
            }),
        ],
    };

    private async Task<IReadOnlyList<Dots>> DotsAsync(string html)
    {
        await using var pack = await OpenPack.AtAsync(chromium, chromium.Write(html));
        var pdf = await pack.Page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true });
        var folder = Directory.CreateTempSubdirectory("procscript-labels-");
        try
        {
            var input = Path.Combine(folder.FullName, "labels.pdf");
            await File.WriteAllBytesAsync(input, pdf);
            using var drawing = Process.Start(new ProcessStartInfo("pdftoppm")
            {
                ArgumentList = { "-r", DotsPerInch.ToString(CultureInfo.InvariantCulture), "-gray", input, Path.Combine(folder.FullName, "page") },
            })!;
            await drawing.WaitForExitAsync();
            Assert.Equal(0, drawing.ExitCode);
            return [.. folder.GetFiles("*.pgm").OrderBy(file => file.Name, StringComparer.Ordinal).Select(file => Dots.Read(File.ReadAllBytes(file.FullName)))];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static bool WithinTheTolerance((double Width, double Height) expected, (double Width, double Height) actual) =>
        Math.Abs(expected.Width - actual.Width) < Tolerance && Math.Abs(expected.Height - actual.Height) < Tolerance;

    [GeneratedRegex("<meta http-equiv=\"Content-Security-Policy\"[^>]*>")]
    private static partial Regex Policy();

    /// <summary>A page as dots, ten to the millimetre.</summary>
    private sealed record Dots(int Columns, int Rows, byte[] Grey, int Start)
    {
        private const int PerMillimetre = 10;
        private const int Dark = 160;

        public double Width => (double)Columns / PerMillimetre;

        public double Height => (double)Rows / PerMillimetre;

        public static Dots Read(byte[] file)
        {
            // P5, the width, the height and the greatest grey, each ended by a blank; then the dots.
            var head = Encoding.ASCII.GetString(file, 0, 64).Split([' ', '\n'], 5);
            var (columns, rows) = (int.Parse(head[1], CultureInfo.InvariantCulture), int.Parse(head[2], CultureInfo.InvariantCulture));
            return new Dots(columns, rows, file, file.Length - (columns * rows));
        }

        public (double First, double Last) Across(double y, double from, double to) => Ends(from, to, Columns, x => IsDark(x, (int)(y * PerMillimetre)));

        public (double First, double Last) Down(double x, double from, double to) => Ends(from, to, Rows, y => IsDark((int)(x * PerMillimetre), y));

        private bool IsDark(int x, int y) => Grey[Start + (y * Columns) + x] < Dark;

        private static (double First, double Last) Ends(double from, double to, int count, Func<int, bool> isDark)
        {
            var (first, last) = ((int)Math.Max(0, from * PerMillimetre), (int)Math.Min(count - 1, to * PerMillimetre));
            var dark = Enumerable.Range(first, last - first + 1).Where(isDark).ToList();
            Assert.NotEmpty(dark);
            return ((double)dark[0] / PerMillimetre, (double)(dark[^1] + 1) / PerMillimetre);
        }
    }
}
