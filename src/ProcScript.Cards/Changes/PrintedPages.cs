using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Changes;

/// <summary>What the pages of a pack show on paper: they are made, as a build makes them, and what no paper shows is left out.</summary>
internal static partial class PrintedPages
{
    private const string Bags = "bags";

    /// <summary>Every page and every bag label, by its place in the pack, with what stands in its margins, but for the revision.</summary>
    public static Dictionary<string, string> Of(Plan plan)
    {
        var html = WorkPack.Html(plan with { Revision = "" }, PackTemplates.Standard).Text;
        var margins = string.Concat(Margin().Matches(html).Select(match => match.Value));
        var pages = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (id, page) in Parts(html, Page()))
        {
            if (id == Bags)
            {
                foreach (var (label, text) in Parts(page, Label()))
                {
                    pages[$"bag {label}"] = Shown(text);
                }
            }
            else
            {
                pages[PlaceOf(id)] = margins + Shown(page);
            }
        }

        return pages;
    }

    /// <summary>A page with one mark for every number.</summary>
    public static string WithoutNumbers(string page) => Number().Replace(page, "#");

    /// <summary>From each opening to the next, or to the end of what they stand in.</summary>
    private static IEnumerable<(string Id, string Text)> Parts(string html, Regex opening)
    {
        var openings = opening.Matches(html);
        for (var i = 0; i < openings.Count; i++)
        {
            var end = i + 1 < openings.Count ? openings[i + 1].Index : html.IndexOf("</main>", openings[i].Index, StringComparison.Ordinal);
            yield return (openings[i].Groups["id"].Value, html[openings[i].Index..(end < 0 ? html.Length : end)]);
        }
    }

    private static string PlaceOf(string id) => id switch
    {
        "make-safe" => "safe",
        "close-out" => "close",
        _ when id.LastIndexOf('-') is > 0 and var hyphen && int.TryParse(id[(hyphen + 1)..], CultureInfo.InvariantCulture, out var number) =>
            string.Create(CultureInfo.InvariantCulture, $"{char.ToUpperInvariant(id[0])}{id[1..hyphen]} {number - 1}"),
        _ => id,
    };

    private static string Shown(string html) => Unseen().Replace(html, "");

    [GeneratedRegex(@"<section class=""card[^""]*"" id=""(?<id>[^""]+)""", RegexOptions.CultureInvariant)]
    private static partial Regex Page();

    [GeneratedRegex(@"<li class=""label"" id=""bag-(?<id>[0-9]+)""", RegexOptions.CultureInvariant)]
    private static partial Regex Label();

    // Of each page the same; what names the page itself is in the page.
    [GeneratedRegex(@"(?<=@(?:top|bottom)-(?:left|right) \{ )content: [^;]*;(?= (?:font|vertical))", RegexOptions.CultureInvariant)]
    private static partial Regex Margin();

    // Where links lead, and what is read out.
    [GeneratedRegex(@"\s(?:id|href|for|name|headers|title|aria-[a-z]+|data-[a-z-]+)=""[^""]*""", RegexOptions.CultureInvariant)]
    private static partial Regex Unseen();

    [GeneratedRegex("[0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex Number();
}
