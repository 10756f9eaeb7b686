using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Dom;

namespace ProcScript.Cards.Tests.Paper;

/// <summary>
/// Holds a printed pack to its published plan: each thing that somebody does, counts, reads, ticks or signs stands there once, where it belongs.
/// It reads the page as a person does and the plan as another program does, and shares nothing with the templates.
/// </summary>
internal sealed partial class PaperReader(IDocument page, JsonElement plan, PaperWords words)
{
    private readonly List<string> _faults = [];

    /// <summary>What is missing, or there twice, in words.</summary>
    public IReadOnlyList<string> Faults()
    {
        var steps = Cards().SelectMany(card => card.GetProperty("steps").EnumerateArray()).ToList();
        Same("steps", steps.Select(step => $"{Number(step, "number")}"), page.QuerySelectorAll(".step").Select(row => row.QuerySelector(".no")!.TextContent.Trim()));
        var named = page.QuerySelectorAll("[id^=step-]").ToLookup(row => row.Id, StringComparer.Ordinal);
        foreach (var step in steps)
        {
            var rows = named[$"step-{Number(step, "number")}"].ToList();
            if (rows.Count != 1)
            {
                _faults.Add($"step {Number(step, "number")} stands {rows.Count} times");
                continue;
            }

            Read(step, rows[0]);
        }

        Readings(steps);
        Bags();
        Same("fields", Fields().Distinct(), Fields());
        Same("alerts", Alerts(plan).Concat(steps.SelectMany(Alerts)), page.QuerySelectorAll(".alert").Where(alert => alert.Closest(".hand-over") is null).Select(AlertWords));
        return _faults;
    }

    private IEnumerable<JsonElement> Cards() => plan.GetProperty("strip").EnumerateArray().Append(plan.GetProperty("work")).Concat(plan.GetProperty("refit").EnumerateArray());

    private IEnumerable<string> Fields() => page.QuerySelectorAll("[data-field]").Select(field => field.GetAttribute("data-field")!);

    private void Read(JsonElement step, IElement row)
    {
        var name = $"step {Number(step, "number")}";
        Same($"{name}, what to do and how many", [Bare(Text(step, "text"))], row.QuerySelectorAll(".act b").Select(words => Told(words, row, Number(step, "count"), Text(step, "text"))));
        Same($"{name}, torque", step.GetProperty("torqueStages").EnumerateArray().Select(Stage), row.QuerySelectorAll(".torque").Select(torque => Bare(Regex.Replace(torque.TextContent, $@"^\s*{words.Then} ", ""))));
        Same($"{name}, alerts", Alerts(step), row.QuerySelectorAll(".alert").Select(AlertWords));
        Same($"{name}, photos", Texts(step, "photos").Select(Bare), row.QuerySelectorAll(".photo label").Select(label => Bare(label.LastChild!.TextContent)));
        Same($"{name}, ticks", Texts(step, "ticks").Select(Bare), row.QuerySelectorAll("[data-field*='-tick-'] + label").Select(label => Bare(label.TextContent)));
        Same($"{name}, checks", Texts(step, "checks").Select(Bare), row.QuerySelectorAll("input[data-field*='-check-'] + .prose").Select(prose => Bare(prose.TextContent)[words.Check.Length..]));
        Same($"{name}, new parts", step.GetProperty("newParts").EnumerateArray().Select(part => Bare(Text(part, "text"))), row.QuerySelectorAll(".new").Select(New));
        Same($"{name}, bags", step.GetProperty("bags").EnumerateArray().Select(bag => $"{bag}"), row.QuerySelectorAll("td.bag b").Select(bag => bag.TextContent));
        Same($"{name}, list", Lines(step), row.QuerySelectorAll(".return .line .prose").Select(line => Bare(After(line))));
        Same($"{name}, proof", Proofs(step), row.QuerySelectorAll(".return .blanks:has([data-field$=reading]) span b").Select(limits => Bare(limits.TextContent)));
        Same($"{name}, done", ["1"], [$"{row.QuerySelectorAll("input.main").Length}"]);
        Same($"{name}, second person", [step.GetProperty("signed").GetBoolean() ? "1" : "0"], [$"{row.QuerySelectorAll("input[data-field$=second]").Length}"]);
    }

    /// <summary>What is worked down at a step that isolates again, or that brings an energy back.</summary>
    private static IEnumerable<string> Lines(JsonElement step) => new[] { "return", "isolation" }
        .Select(name => step.GetProperty(name)).Where(list => list.ValueKind == JsonValueKind.Object)
        .SelectMany(list => list.GetProperty("lines").EnumerateArray().Select(line => Bare(Text(line, "text"))));

    private static IEnumerable<string> Proofs(JsonElement step) =>
        step.GetProperty("isolation") is { ValueKind: JsonValueKind.Object } isolation && Text(isolation, "limits") is { Length: > 0 } limits ? [Bare(limits)] : [];

    /// <summary>A line without its head and the mark of what is usual.</summary>
    private static string After(IElement line) => string.Concat(line.ChildNodes
        .SkipWhile(node => node is not IElement { LocalName: "b" }).Skip(1)
        .Where(node => node is not IElement { ClassName: "usual" }).Select(node => node.TextContent));

    /// <summary>What a step says with its count, which stands in a column of its own and nowhere else.</summary>
    private static string Told(IElement words, IElement row, int count, string planned)
    {
        // What is not translated stands between marks that no page shows.
        planned = planned.Replace("\u2068", "", StringComparison.Ordinal).Replace("\u2069", "", StringComparison.Ordinal);
        var counted = $"{count} ×";
        // Within a size, as in M8 × 25, a number stands behind a letter.
        var at = Regex.Match(planned, $@"(?<![A-Za-z\d]){count} ×") is { Success: true } match ? match.Index : -1;
        var columns = row.QuerySelectorAll("td.count").Select(cell => cell.TextContent.Trim()).ToList();
        return count == 0 || at < 0
            ? Bare(words.TextContent) + Bare(string.Concat(columns))
            : columns is [var only] && only == counted
                ? Bare(words.TextContent.Length >= at ? words.TextContent.Insert(at, counted) : words.TextContent)
                : $"{string.Join(" and ", columns)}: {words.TextContent}";
    }

    /// <summary>A new part as it is printed, without the word before it and what it replaces behind it.</summary>
    private string New(IElement part) =>
        Bare(Regex.Replace(string.Concat(part.ChildNodes.Where(node => node is not IElement { LocalName: "b" }).Select(node => node.TextContent)), words.Replaces, "", RegexOptions.Singleline));

    private string Stage(JsonElement stage) => stage.GetProperty("isAngle").GetBoolean()
        ? Bare($"{Text(stage, "set")} {words.Further}")
        : Bare($"{words.Set} {Text(stage, "set")} {Text(stage, "range")} {Text(stage, "other")}");

    /// <summary>Each reading has one place to write it, with its limits beside it; those of making an energy safe stand on that card.</summary>
    private void Readings(List<JsonElement> steps)
    {
        var atSteps = steps.SelectMany(step => step.GetProperty("notes").EnumerateArray()
            .Concat(step.GetProperty("reading") is { ValueKind: JsonValueKind.Object } reading ? [reading] : Array.Empty<JsonElement>())
            .Select(reading => $"{Number(step, "number")} {Bare(Text(reading, "text"))} {Bare(Text(reading, "limits"))}"));
        Same("readings at steps", atSteps, page.QuerySelectorAll(".step .reading:not(.second)").Select(line =>
            $"{line.Closest(".step")!.Id!["step-".Length..]} {Bare(line.QuerySelector("label")!.TextContent)} {Bare(line.QuerySelector("span b")?.TextContent ?? "")}"));
        Same("readings of energies", plan.GetProperty("energies").EnumerateArray().Select(energy => $"{Bare(Text(energy, "title"))} {Bare(Text(energy, "limits"))}"), page.QuerySelectorAll("#make-safe input[data-field$=reading]").Select(field =>
            $"{Bare(HeadNumber().Replace(field.Closest(".energy")!.QuerySelector("h3")!.TextContent, ""))} {Bare(field.Closest(".blanks")!.QuerySelector("span b")?.TextContent ?? "")}"));
        foreach (var step in steps.Where(step => Text(step, "verb") is "empty" or "fill"))
        {
            Same($"step {Number(step, "number")}, amount", ["1"], [$"{page.QuerySelectorAll($"#step-{Number(step, "number")} .reading input").Length}"]);
        }

        Same("amounts elsewhere", [], page.QuerySelectorAll("#make-safe td input, #close-out td.fill input:not([data-field^=due])").Select(field => field.GetAttribute("data-field")!));
    }

    private void Bags()
    {
        var bags = plan.GetProperty("bags").EnumerateArray().ToList();
        Same("labels", bags.Select(bag => $"{Number(bag, "number")}"), page.QuerySelectorAll(".label h3").Select(head => Digits().Match(head.TextContent).Value));
        Same("bags at zero", bags.Select(bag => $"out-bag-{Number(bag, "number")}"), Fields().Where(field => field.StartsWith("out-bag-", StringComparison.Ordinal)));
        foreach (var (bag, label) in bags.Zip(page.QuerySelectorAll(".label")))
        {
            Same(
                $"bag {Number(bag, "number")}",
                bag.GetProperty("contents").EnumerateArray().Select(line => $"{Number(line, "count")} {Number(line, "stripStep")}"),
                label.QuerySelectorAll("li").Select(line => $"{Digits().Match(line.TextContent).Value} {Digits().Match(line.QuerySelector("a")!.TextContent).Value}"));
        }
    }

    private IEnumerable<string> Alerts(JsonElement of) =>
        of.GetProperty("alerts").EnumerateArray().Select(alert => $"{words.Signal(Text(alert, "word"))} {Bare(Text(alert, "text"))}");

    private static string AlertWords(IElement alert) => $"{alert.QuerySelector(".word")!.TextContent.Trim()} {Bare(alert.QuerySelector(".prose")!.TextContent)}";

    private void Same(string what, IEnumerable<string> planned, IEnumerable<string> printed)
    {
        var (wanted, found) = (planned.ToList(), printed.ToList());
        if (!wanted.SequenceEqual(found, StringComparer.Ordinal))
        {
            _faults.Add($"{what}: planned [{string.Join("; ", wanted)}], printed [{string.Join("; ", found)}]");
        }
    }

    private static int Number(JsonElement of, string name) => of.GetProperty(name).GetInt32();

    private static string Text(JsonElement of, string name) => of.GetProperty(name).GetString()!;

    private static IEnumerable<string> Texts(JsonElement of, string name) => of.GetProperty(name).EnumerateArray().Select(text => text.GetString()!);

    /// <summary>The letters and digits of a text, so that neither Markdown's marks nor line breaks count.</summary>
    private static string Bare(string text) => string.Concat(text.Where(char.IsLetterOrDigit));

    [GeneratedRegex(@"^\d+\. ")]
    private static partial Regex HeadNumber();

    [GeneratedRegex(@"\d+")]
    private static partial Regex Digits();
}
