using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>The figures in a sentence of notes, and the sentence without them.</summary>
internal sealed partial record NoteFigures
{
    /// <summary>The sentence without its figures.</summary>
    public required string Rest { get; init; }

    /// <summary>How many; 0 where nothing is said.</summary>
    public int Count { get; init; }

    /// <summary>The name of the kind that a size speaks of, such as <c>m10x30</c>; empty where there is none.</summary>
    public string Kind { get; init; } = "";

    /// <summary>A thread in inches, as the language writes it; empty where there is none.</summary>
    public string Thread { get; init; } = "";

    /// <summary>The torque, as the language writes it; empty where there is none.</summary>
    public string Torque { get; init; } = "";

    /// <summary>The mass, likewise.</summary>
    public string Mass { get; init; } = "";

    /// <summary>A volume, likewise.</summary>
    public string Volume { get; init; } = "";

    /// <summary>The voltage, likewise.</summary>
    public string Voltage { get; init; } = "";

    /// <summary>A time, likewise.</summary>
    public string Time { get; init; } = "";

    /// <summary>How many people; 0 where nothing is said.</summary>
    public int People { get; init; }

    /// <summary>The tool in words; empty where none is named.</summary>
    public string Tool { get; init; } = "";

    /// <summary>The width of a head in mm; empty where none is said.</summary>
    public string Head { get; init; } = "";

    /// <summary>Takes the figures out of a sentence.</summary>
    public static NoteFigures Of(string sentence)
    {
        var figures = new NoteFigures { Rest = sentence };
        figures = figures.Take(TorquePattern(), (one, match) => one with { Torque = TorqueOf(match) });
        figures = figures.Take(ToolPattern(), (one, match) => one with { Tool = match.Groups[1].Value.Trim() });
        figures = figures.Take(ToolInBracketsPattern(), (one, match) => one.Tool.Length > 0 ? one : one with { Tool = match.Groups[1].Value.Trim() });
        figures = figures.Take(BitPattern(), (one, match) => one.Tool.Length > 0 ? one : one with { Tool = $"T{match.Groups[1].Value} bit" });
        figures = figures.Take(PeoplePattern(), (one, match) => one with { People = match.Groups[1].Success ? Whole(match.Groups[1].Value) : 2 });
        figures = figures.Take(UnifiedPattern(), (one, match) => one with { Thread = match.Value.Trim() });
        figures = figures.Take(MetricPattern(), (one, match) => one with { Kind = Metric(match) });
        figures = figures.Take(ScrewPattern(), (one, match) => one with { Kind = $"screw_{Number(match.Groups[1]).Replace('.', '_')}x{Number(match.Groups[2])}" });
        figures = figures.Take(MassPattern(), (one, match) => one with { Mass = $"{Number(match.Groups[1])} {(match.Groups[2].Value.StartsWith("lb", StringComparison.OrdinalIgnoreCase) ? "lb" : "kg")}" });
        figures = figures.Take(VolumePattern(), (one, match) => one with { Volume = $"{Number(match.Groups[1])} {VolumeUnit(match.Groups[2].Value)}" });
        figures = figures.Take(VoltagePattern(), (one, match) => one with { Voltage = $"{Number(match.Groups[1])} V" });
        figures = figures.Take(TimePattern(), (one, match) => one with { Time = $"{Number(match.Groups[1])} {TimeUnit(match.Groups[2].Value)}" });
        figures = figures.Take(HeadPattern(), (one, match) => one with { Head = match.Groups[1].Value });
        figures = figures.Take(HeadBehindPattern(), (one, match) => one.Head.Length > 0 ? one : one with { Head = match.Groups[1].Value });
        figures = figures.Take(CountBehindPattern(), (one, match) => one with { Count = Whole(match.Groups[1].Value) });
        figures = figures.Count > 0 ? figures : figures.Take(CountPattern(), (one, match) => one with { Count = Whole(match.Groups[1].Value) });
        return figures with { Rest = Blanks().Replace(Empty().Replace(figures.Rest, " "), " ").Trim(' ', ',', ';', '-', '–', '.', '@') };
    }

    /// <summary>A number in figures or words; 0 where it is none.</summary>
    private static int Whole(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number
        : word.Equals("both", StringComparison.OrdinalIgnoreCase) || word.Equals("pair of", StringComparison.OrdinalIgnoreCase) ? 2
        : word.Equals("single", StringComparison.OrdinalIgnoreCase) ? 1
        : NumberWords.Of(word) ?? 0;

    private NoteFigures Take(Regex pattern, Func<NoteFigures, Match, NoteFigures> read) =>
        pattern.Match(Rest) is { Success: true } match ? read(this, match) with { Rest = Rest.Remove(match.Index, match.Length).Insert(match.Index, Left(match.Value)) } : this;

    // Of "(4 clips)" the brackets stay.
    private static string Left(string taken) => (taken.Contains('(', StringComparison.Ordinal), taken.Contains(')', StringComparison.Ordinal)) switch
    {
        (true, false) => " (",
        (false, true) => ") ",
        _ => " ",
    };

    private static string Number(Group group) => group.Value.Replace(',', '.');

    private static string Metric(Match match)
    {
        var (pitch, length) = (match.Groups[2], match.Groups[3]);
        return $"m{match.Groups[1].Value}{(length.Success ? "x" + length.Value : pitch.Success && !pitch.Value.Contains('.', StringComparison.Ordinal) ? "x" + pitch.Value : "")}";
    }

    private static string TorqueOf(Match match)
    {
        var tolerance = match.Groups[2].Success ? $" ± {Number(match.Groups[2])}" : "";
        var angle = match.Groups[4].Success ? $" + {match.Groups[4].Value}°" : "";
        return $"{Number(match.Groups[1])}{tolerance} {TorqueUnit(match.Groups[3].Value)}{angle}";
    }

    private static string TorqueUnit(string unit) =>
        unit.StartsWith('N') || unit.StartsWith('n') ? "N.m" : unit.Contains("in", StringComparison.OrdinalIgnoreCase) ? "lbf.in" : "lbf.ft";

    private static string VolumeUnit(string unit) =>
        unit.StartsWith("ml", StringComparison.OrdinalIgnoreCase) ? "mL" : unit.StartsWith('q') ? "qt" : unit.StartsWith('g') ? "gal" : "L";

    private static string TimeUnit(string unit) => unit.StartsWith('s') ? "s" : unit.StartsWith('h') ? "h" : "min";

    [GeneratedRegex(@"(?:\(\s*)?(?:\b(?:torque|tightened|tighten)\s*(?:to|:|of|is)?\s*)?(\d+(?:[.,]\d+)?)(?:\s*(?:±|\+/?-)\s*(\d+(?:[.,]\d+)?))?\s*(N\s?[.·*-]?\s?m|(?:ft|in)[\s.·-]?lbf?s?|lbf?[\s.·-]?(?:ft|in))\b(?:\s*\+\s*(\d{1,3})\s*(?:°|deg(?:rees)?\b))?(?:\s*on\s+(?:refit(?:ting)?|re-?assembly|fitting))?(?:\s*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex TorquePattern();

    [GeneratedRegex(@"\b(?:with|using|use)\s+(?:an?|the)?\s*((?:[\w./-]+\s+){0,4}(?:socket|spanner|wrench|key|screwdriver|driver|pliers|lever|puller|knife|cutters?|hammer|drift|ratchet|tool|bit|extension|mallet|bar|crane|hoist|jack|tester|multimeter|meter|scraper|heat gun|chisel|saw|snips))\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex ToolPattern();

    [GeneratedRegex(@"(?:\(\s*)?(?:\b(\d+|two|three|four)\s*(?:people|persons?|men|man|hands)\b|\b(?:with|needs|get)\s+(?:an?\s+|the\s+|your\s+)?(?:helper|mate|assistant|second\s+(?:person|man|pair\s+of\s+hands)|colleague)\b)(?:\s*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PeoplePattern();

    [GeneratedRegex(@"\bM(\d{1,2})(?:\s*[x×*]\s*(\d{1,3}(?:\.\d+)?))?(?:\s*[x×*]\s*(\d{1,3}))?\b", RegexOptions.CultureInvariant)]
    private static partial Regex MetricPattern();

    [GeneratedRegex(@"\b(\d{1,2}(?:[.,]\d)?)\s*[x×]\s*(\d{1,3})\b(?!\s*mm)", RegexOptions.CultureInvariant)]
    private static partial Regex ScrewPattern();

    [GeneratedRegex(@"(?:\(\s*)?(?:about\s+|approx\.?\s+)?\b(\d+(?:[.,]\d+)?)\s*(kg|lbs?)\b(?:\s*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex MassPattern();

    [GeneratedRegex(@"(?:\(\s*)?(?:about\s+|approx\.?\s+)?\b(\d+(?:[.,]\d+)?)\s*(ml|l|litres?|liters?|qt|gal)\b(?:\s+of)?(?:\s*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex VolumePattern();

    [GeneratedRegex(@"(?:\(\s*)?\b(\d+)\s*V(?:olts?)?\b(?:\s*\))?", RegexOptions.CultureInvariant)]
    private static partial Regex VoltagePattern();

    [GeneratedRegex(@"(?:\(\s*)?(?:\bfor\s+)?(?:at least\s+)?\b(\d+(?:[.,]\d+)?)\s*(seconds?|secs?|s|minutes?|mins?|hours?|h)\b(?:\s*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex TimePattern();

    [GeneratedRegex(@"\b(\d{1,2})\s?mm\b(?=\s+(?:\w+\s+)?(?:bolts?|nuts?|screws?|hex|heads?))", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HeadPattern();

    [GeneratedRegex(@"(?:\(\s*)?(?<![\w.,/])(\d{1,3}|both|pair of|one|single|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?:\s*[x×]|\s*off|\s?no\.?|\s?nr\.?|\s*pcs\.?)?(?![\w/])(?!\s*(?:mm|cm|%|°|bar|psi|th|st|nd|rd)\b)(?:\s*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CountPattern();

    [GeneratedRegex(@"(?:\(\s*)?(?<!\d[.,]?\s?)\b(?:[x×]|qty\.?:?|quantity:?)\s?(\d{1,3})\b(?!\s*[x×]|\s*mm)(?:\s*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CountBehindPattern();

    [GeneratedRegex(@"(?<=\b(?:bolts?|nuts?|screws?)\s+)\(?(\d{1,2})\s?mm\b\)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HeadBehindPattern();

    [GeneratedRegex(@"\(\s*((?:[\w./-]+\s+){0,3}(?:socket|spanner|wrench|key|screwdriver|driver|pliers|puller|knife|cutters?|mallet|extension|jack))\s*\)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex ToolInBracketsPattern();

    [GeneratedRegex(@"\bT(\d{1,2})\b(?:\s+(?:bit|driver|key))?", RegexOptions.CultureInvariant)]
    private static partial Regex BitPattern();

    [GeneratedRegex(@"(?<![\d/.])\b\d{1,2}(?:/\d{1,2})?-\d{2}\b(?:\s*UN[CF])?", RegexOptions.CultureInvariant)]
    private static partial Regex UnifiedPattern();

    [GeneratedRegex(@"\(\s*[,;x×]*\s*\)", RegexOptions.CultureInvariant)]
    private static partial Regex Empty();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}
