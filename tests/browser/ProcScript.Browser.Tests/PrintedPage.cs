using System.Diagnostics;
using System.Globalization;
using System.Xml.Linq;

namespace ProcScript.Browser.Tests;

/// <summary>A page of a printed pack as poppler's pdftotext sees it: words with their boxes, in points from the upper left.</summary>
/// <param name="Number">The page, counted from 1.</param>
/// <param name="Width">The width of the paper.</param>
/// <param name="Height">The height of the paper.</param>
/// <param name="Words">The words.</param>
internal sealed record PrintedPage(int Number, double Width, double Height, IReadOnlyList<PrintedWord> Words)
{
    // Words of two sizes stand on one line although their boxes end some points apart.
    private const double SameLine = 4;

    /// <summary>All words in the order they are read, with blanks between them.</summary>
    public string Text => string.Join(' ', Words.Select(word => word.Text));

    /// <summary>Words line by line: the order of the file follows what poppler takes for columns.</summary>
    public static IReadOnlyList<PrintedWord> ByLine(IEnumerable<PrintedWord> words)
    {
        List<List<PrintedWord>> lines = [];
        foreach (var word in words.OrderBy(word => word.Bottom))
        {
            if (lines.Count == 0 || word.Bottom - lines[^1][0].Bottom > SameLine)
            {
                lines.Add([]);
            }

            lines[^1].Add(word);
        }

        return [.. lines.SelectMany(line => line.OrderBy(word => word.Left))];
    }

    /// <summary>Reads the pages of a PDF.</summary>
    public static async Task<IReadOnlyList<PrintedPage>> ReadAsync(byte[] pdf)
    {
        var folder = Directory.CreateTempSubdirectory("procscript-print-");
        try
        {
            var (input, output) = (Path.Combine(folder.FullName, "pack.pdf"), Path.Combine(folder.FullName, "words.html"));
            await File.WriteAllBytesAsync(input, pdf);
            using var reader = Process.Start(new ProcessStartInfo("pdftotext") { ArgumentList = { "-bbox", input, output } })!;
            await reader.WaitForExitAsync();
            Assert.Equal(0, reader.ExitCode);
            return [.. Pages(XDocument.Load(output))];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static IEnumerable<PrintedPage> Pages(XDocument document) =>
        document.Descendants().Where(element => element.Name.LocalName == "page").Select((page, at) => new PrintedPage(
            at + 1,
            Value(page, "width"),
            Value(page, "height"),
            [.. page.Elements().Select(word => new PrintedWord(word.Value, Value(word, "xMin"), Value(word, "yMin"), Value(word, "xMax"), Value(word, "yMax")))]));

    private static double Value(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}

/// <summary>A word and its box.</summary>
internal sealed record PrintedWord(string Text, double Left, double Top, double Right, double Bottom);
