using System.Text.RegularExpressions;
using AngleSharp.Dom;

namespace ProcScript.Cards.Tests.Paper;

/// <summary>
/// Holds the lists before the work against the steps, both ways, as somebody does who lays things out: what a step asks for is in the list with the
/// step that first asks for it, and nothing is in the list that no step asks for. It reads the printed page alone, and shares nothing with the templates.
/// </summary>
/// <param name="page">The page.</param>
/// <param name="words">The words of its language.</param>
/// <param name="tiesNeedCutters">Whether the catalog of the pack has cutters for ties.</param>
internal sealed partial class ListReader(IDocument page, PaperWords words, bool tiesNeedCutters = true)
{
    private readonly List<string> _faults = [];

    /// <summary>What disagrees, in words.</summary>
    public IReadOnlyList<string> Faults()
    {
        var steps = page.QuerySelectorAll(".step").ToList();
        var asked = steps.SelectMany(step => step.QuerySelectorAll(".tool").Select(tool => (Tool: Said(tool), Step: Number(step)))).ToList();
        // A torque wrench that the catalog has not is listed with what it has to cover.
        var listed = Tools().Select(tool => asked.Exists(one => one.Tool == tool.Title) ? tool : tool with { Title = Regex.Replace(tool.Title, $@"^({words.Wrench}), [\d.,].*$", "$1") }).ToList();
        Same("tools", asked.Select(one => one.Tool).Distinct(), listed.Where(tool => !tool.OfJob).Select(tool => tool.Title));
        foreach (var tool in listed.Where(tool => !tool.OfJob))
        {
            var at = asked.Where(one => one.Tool == tool.Title).Select(one => one.Step).Distinct().ToList();
            Same($"steps with {tool.Title}", [$"{at.DefaultIfEmpty().Min()} {at.Count}"], [$"{tool.First} {tool.Steps}"]);
        }

        Same("tools listed once", listed.Select(tool => tool.Title).Distinct(), listed.Select(tool => tool.Title));
        var worn = steps.SelectMany(step => Worn(step.QuerySelector(".do > .wear"))).ToHashSet(StringComparer.Ordinal);
        var wear = page.QuerySelectorAll("#before ul.ticks span").Select(Said).ToList();
        var ofJob = wear.Where(item => item.EndsWith(words.OnTheWholeJob, StringComparison.Ordinal)).Select(item => item[..^words.OnTheWholeJob.Length]).ToList();
        Same("worn at steps", worn, wear.Where(item => item.EndsWith(words.AtTheSteps, StringComparison.Ordinal)).Select(item => item[..^words.AtTheSteps.Length]));
        foreach (var card in page.QuerySelectorAll(".strip, .work, .refit"))
        {
            Same($"worn on {card.Id}", ofJob, Worn(card.QuerySelector(".standing .wear")));
        }

        foreach (var step in steps)
        {
            Needs(step, ofJob);
        }

        foreach (var alert in page.QuerySelectorAll("#cover .alert"))
        {
            Wears("the cover", Said(alert), [.. ofJob, .. worn]);
        }

        return _faults;
    }

    /// <summary>What a step asks for by what is done there and by what it warns of, and what it cannot ask for.</summary>
    private void Needs(IElement step, List<string> ofJob)
    {
        var (name, tools) = ($"step {Number(step)}", step.QuerySelectorAll(".tool").Select(Said).ToList());
        var act = Said(step.QuerySelector(".act b")!);
        if (step.QuerySelectorAll(".marking").Any(mark => Said(mark).Contains("paint", StringComparison.Ordinal)) && !tools.Exists(tool => tool.Contains("marker", StringComparison.Ordinal)))
        {
            _faults.Add($"{name} marks without a marker");
        }

        if (Regex.IsMatch(act, words.Restore) && tools.Find(tool => Meter().IsMatch(tool)) is { } meter)
        {
            _faults.Add($"{name} only restores, and takes a {meter}");
        }

        if (tiesNeedCutters && act.Contains("cable tie", StringComparison.Ordinal) && !tools.Exists(tool => tool.Contains("cutters", StringComparison.Ordinal)))
        {
            _faults.Add($"{name} is about a tie, without cutters");
        }

        foreach (var alert in step.QuerySelectorAll(".alert"))
        {
            Wears(name, Said(alert), [.. ofJob, .. Worn(step.QuerySelector(".do > .wear"))]);
        }
    }

    private void Wears(string name, string alert, IReadOnlyCollection<string> worn)
    {
        if (!words.IsEnglish)
        {
            return;
        }

        foreach (var gear in Wear().Matches(alert).SelectMany(said => Gear().Matches(said.Value)).Select(gear => gear.Value))
        {
            if (!worn.Any(item => item.Contains(gear, StringComparison.OrdinalIgnoreCase)))
            {
                _faults.Add($"{name} warns to wear {gear}, and takes [{string.Join("; ", worn)}]");
            }
        }
    }

    private IEnumerable<(string Title, int First, int Steps, bool OfJob)> Tools() =>
        from row in page.QuerySelectorAll("#before tr:has([data-field^=tool-])")
        let cells = row.QuerySelectorAll("td").Select(Said).ToList()
        let title = Count().Replace(Blanks().Replace(string.Concat(row.QuerySelector("th")!.ChildNodes.Where(node => node is not IElement { ClassName: "small" }).Select(node => node.TextContent)), " ").Trim(), "")
        select cells[0] == words.WholeJob ? (title, 0, 0, true) : (title, int.Parse(cells[0], null), int.Parse(cells[1], null), false);

    private static IEnumerable<string> Worn(IElement? line) =>
        line is null ? [] : Said(line)[(Said(line).IndexOf(':', StringComparison.Ordinal) + 1)..].TrimEnd('.').Split("; ").Select(item => item.Trim());

    private static int Number(IElement step) => int.Parse(step.Id!["step-".Length..], null);

    private static string Said(INode node) => Blanks().Replace(node.TextContent, " ").Trim();

    private void Same(string what, IEnumerable<string> steps, IEnumerable<string> list)
    {
        var (wanted, found) = (steps.Order(StringComparer.Ordinal).ToList(), list.Order(StringComparer.Ordinal).ToList());
        if (!wanted.SequenceEqual(found, StringComparer.Ordinal))
        {
            _faults.Add($"{what}: the steps say [{string.Join("; ", wanted)}], the list [{string.Join("; ", found)}]");
        }
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"^\d+ × ")]
    private static partial Regex Count();

    [GeneratedRegex(@"\b(multimeter|meter|tester|voltmeter|thermometer|test leads)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Meter();

    [GeneratedRegex(@"\b[Ww]ear [^.;:]*")]
    private static partial Regex Wear();

    [GeneratedRegex(@"cut-proof gloves|heat-proof gloves|gloves|eye protection|face shield|wrist strap")]
    private static partial Regex Gear();
}
