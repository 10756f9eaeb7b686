using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using ProcScript.Browser.Tests;
using ProcScript.Cards.Records;
using ProcScript.Jobs.Stores;
using ZXing;
using ZXing.Common;
using ZXing.Multi.QrCode;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>Labels as they come off a printer are read by a decoder that has nothing to do with what drew them, and lead to their bag.</summary>
public sealed class ScannedLabelTests(ChromiumFixture chromium)
{
    /// <summary>As coarse as a phone sees a label at arm's length: six dots to the millimetre.</summary>
    private const int DotsPerInch = 150;

    [Fact]
    public async Task Each_code_on_paper_leads_to_its_own_bag_and_that_to_its_page()
    {
        await using var floor = await RunningFloor.StartAsync();
        var name = await FloorJobs.OpenAsync(floor.Store);
        var job = await LoadedJob.ReadAsync(floor.Store, name, TestContext.Current.CancellationToken);
        var bags = job.Replay.Course.Plan.Bags;
        Assert.NotEmpty(bags);

        var scanned = await ScanAsync(JobLabelPage.Html(job, floor.Address));

        Assert.Equal(
            bags.Select(bag => new Uri(floor.Address, $"b/{name}/{bag.Number}").AbsoluteUri).Order(StringComparer.Ordinal),
            scanned.Where(text => text.Contains("/b/", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        // The parts that come off have labels too, which lead to the job.
        Assert.Contains(new Uri(floor.Address, $"j/{name}").AbsoluteUri, scanned);
        await using var tablet = await Tablet.TakeAsync(chromium, "Mara");
        foreach (var bag in bags)
        {
            await tablet.Page.GotoAsync(scanned.Single(text => text.EndsWith($"/b/{name}/{bag.Number}", StringComparison.Ordinal)));
            await Assertions.Expect(tablet.Page.Locator(".contents")).ToContainTextAsync(bag.Contents[0].Title);
        }
    }

    [Fact]
    public async Task Without_a_server_a_code_says_what_its_label_says()
    {
        await using var floor = await RunningFloor.StartAsync();
        var name = await FloorJobs.OpenAsync(floor.Store);
        var job = await LoadedJob.ReadAsync(floor.Store, name, TestContext.Current.CancellationToken);

        var scanned = await ScanAsync(JobLabelPage.Html(job, address: null));

        Assert.Superset(job.Replay.Course.Plan.Bags.Select(bag => $"{name}: Bag {bag.Number}").ToHashSet(), scanned.ToHashSet());
    }

    /// <summary>Prints a page, draws the paper as dots, and reads every code on it.</summary>
    private async Task<IReadOnlyList<string>> ScanAsync(string html)
    {
        var page = await chromium.NewPageAsync();
        await page.GotoAsync(chromium.Write(html));
        var folder = Directory.CreateTempSubdirectory("procscript-scan-");
        try
        {
            var input = Path.Combine(folder.FullName, "labels.pdf");
            await File.WriteAllBytesAsync(input, await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true }));
            using var drawing = Process.Start(new ProcessStartInfo("pdftoppm")
            {
                ArgumentList = { "-r", DotsPerInch.ToString(CultureInfo.InvariantCulture), "-gray", input, Path.Combine(folder.FullName, "page") },
            })!;
            await drawing.WaitForExitAsync();
            Assert.Equal(0, drawing.ExitCode);
            return [.. folder.GetFiles("*.pgm").SelectMany(file => Read(File.ReadAllBytes(file.FullName)))];
        }
        finally
        {
            folder.Delete(recursive: true);
            await page.Context.CloseAsync();
        }
    }

    private static IEnumerable<string> Read(byte[] file)
    {
        // P5, the width, the height and the greatest grey, each ended by a blank; then the dots.
        var head = Encoding.ASCII.GetString(file, 0, 64).Split([' ', '\n'], 5);
        var (columns, rows) = (int.Parse(head[1], CultureInfo.InvariantCulture), int.Parse(head[2], CultureInfo.InvariantCulture));
        RGBLuminanceSource paper = new(file[^(columns * rows)..], columns, rows, RGBLuminanceSource.BitmapFormat.Gray8);
        var found = new QRCodeMultiReader().decodeMultiple(new BinaryBitmap(new HybridBinarizer(paper)), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });
        return (found ?? []).Select(code => code.Text);
    }
}
