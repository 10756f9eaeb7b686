using System.Buffers;
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Plans.Words;

namespace ProcScript.Analysis.Prose;

/// <summary>
/// Tools and protective equipment that an English text tells people to take: <c>with a second spanner</c>, <c>jack under the middle</c>,
/// <c>wear a face shield</c>. What a text only speaks of, such as a spanner that must not lie on a battery, is none. Common practice, no source.
/// </summary>
/// <param name="Words">As the text says it.</param>
/// <param name="Any">What a title has to have a word of.</param>
/// <param name="IsWorn">Whether it is worn.</param>
/// <param name="Count">How many tools of the sort it takes.</param>
internal sealed partial record NamedGear(string Words, ImmutableArray<string> Any, bool IsWorn, int Count = 1)
{
    private static readonly SearchValues<string> Hints = SearchValues.Create(
        [
            "wear ", "jack ", "hold", "spanner", "wrench", "pliers", "screwdriver", "hammer", "mallet", "scraper", "puller", "meter", "tester", "gauge", "syringe", "knife",
            "chisel", "gun", "funnel", "hoist",
        ],
        StringComparison.OrdinalIgnoreCase);

    private static readonly ImmutableArray<string> Turning = ["spanner", "wrench", "socket", "bit", "key", "screwdriver", "crowfoot", "pliers"];

    /// <summary>What counts as the same thing to wear.</summary>
    private static readonly ImmutableArray<ImmutableArray<string>> Worn =
    [
        ["glove"], UsualGear.Face.Words(), UsualGear.Eyes.Words(), UsualGear.Strap.Words(), ["ear protection", "hearing protection", "ear defenders", "ear plugs"],
        ["respirator", "mask"], ["apron"], ["helmet", "hard hat"], ["harness"],
    ];

    /// <summary>What a text tells people to take.</summary>
    public static IEnumerable<NamedGear> In(string text) => text.AsSpan().ContainsAny(Hints) ? Found(text) : [];

    /// <summary>Whether a title is of that sort.</summary>
    public bool Fits(string title) => Any.Any(word => title.Contains(word, StringComparison.OrdinalIgnoreCase));

    private static IEnumerable<NamedGear> Found(string text)
    {
        foreach (Match with in With().Matches(text))
        {
            var (words, noun) = (Article().Replace(with.Groups["thing"].Value, ""), with.Groups["noun"].Value.ToLowerInvariant());
            yield return Second().IsMatch(words) ? new NamedGear(words, Turning, false, 2) : new NamedGear(words, [noun], false);
        }

        if (CounterHold().Match(text) is { Success: true } hold)
        {
            yield return new NamedGear(hold.Value, Turning, false, 2);
        }

        if (Jack().Match(text) is { Success: true } jack)
        {
            yield return new NamedGear(jack.Value, ["jack"], false);
        }

        foreach (Match wear in Wear().Matches(text))
        {
            foreach (var sort in Worn.Where(sort => sort.Any(word => wear.Groups["things"].Value.Contains(word, StringComparison.OrdinalIgnoreCase))))
            {
                yield return new NamedGear(sort.First(word => wear.Groups["things"].Value.Contains(word, StringComparison.OrdinalIgnoreCase)), sort, true);
            }
        }
    }

    [GeneratedRegex(
        @"(?<!\bnot\s)\bwith\s+(?<thing>(?:an?\s+|the\s+|your\s+)?(?:(?!to\b|of\b|and\b|no\b)[\w-]+\s+){0,3}?"
        + @"(?<noun>spanner|wrench|pliers|screwdriver|hammer|mallet|scraper|puller|multimeter|voltmeter|meter|tester|thermometer|gauge|syringe|knife|chisel|heat gun|hot-air gun|funnel|hoist|jack))s?\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex With();

    [GeneratedRegex(@"^(an?|the|your)\s+", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Article();

    [GeneratedRegex(@"\b(second|another|two)\s+([\w-]+\s+)?(spanner|wrench)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Second();

    [GeneratedRegex(@"\bcounter-?\s?hold\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CounterHold();

    [GeneratedRegex(@"(?<![\w-])[Jj]ack (up|under|it up|them up)\b", RegexOptions.CultureInvariant)]
    private static partial Regex Jack();

    [GeneratedRegex(@"(?<!\bor )\b[Ww]ear (?<things>[^.;:]+)", RegexOptions.CultureInvariant)]
    private static partial Regex Wear();
}
