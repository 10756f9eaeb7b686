using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ProcScript.LanguageServer.Serving;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>
/// Fills the places of a sentence that stand for a name or a word with those that fit there, to choose from; what fits is asked at each as if
/// one had typed that far.
/// </summary>
/// <param name="here">What is known around the place.</param>
/// <param name="place">The place that the sentence would be written at.</param>
/// <param name="client">What the client can do.</param>
internal sealed partial class HoleChoices(Vicinity here, TypingPlace place, ClientProfile client)
{
    /// <summary>More than these nobody reads through; who types gets all.</summary>
    private const int Most = 20;

    /// <summary>The body of a sentence with what there is to choose from.</summary>
    /// <param name="body">The sentence, in the protocol's notation for places to fill in.</param>
    public string Fill(string body)
    {
        var (filled, written, at) = (new StringBuilder(), new StringBuilder(), 0);
        foreach (Match hole in Hole().Matches(body))
        {
            var (number, example) = (hole.Groups["number"].Value, hole.Groups["example"].Value);
            var between = body[at..hole.Index];
            at = hole.Index + hole.Length;
            written.Append(between);
            var choices = !hole.Groups["others"].Success && Word().IsMatch(example) && !between.EndsWith('"') ? At(written.ToString(), example) : [];
            written.Append(choices is [var first, ..] ? first : example);
            filled.Append(between).Append(choices switch
            {
                [] => hole.Value,
                [var only] => string.Create(CultureInfo.InvariantCulture, $"${{{number}:{only}}}"),
                _ => string.Create(CultureInfo.InvariantCulture, $"${{{number}|{string.Join(',', choices.Select(Escaped))}|}}"),
            });
        }

        return filled.Append(body, at, body.Length - at).ToString();
    }

    /// <summary>What fits behind some words; nothing where it is for the writer to make up.</summary>
    private List<string> At(string words, string example)
    {
        var next = new TypingPlace(place.Grammar.Behind(words));
        var within = next.Grammar.Next.Where(one => !one.Begins).ToList();
        var names = new NameChoices(here, next) { OnlyMeant = true };
        var isWord = within.Exists(one => one.Sort == NextWordSort.Keyword && one.Word == example);
        var choices = isWord
            ? new WordChoices(here, next, names, client).Within(within.Where(one => one.Sort == NextWordSort.Keyword)).OrderByDescending(choice => choice.Label == example)
            : within.Where(one => one.Sort == NextWordSort.Name).SelectMany(names.For);
        return [.. choices.Select(choice => choice.Label).Where(label => Word().IsMatch(label)).Distinct(StringComparer.Ordinal).Take(Most)];
    }

    private static string Escaped(string choice) => choice.Replace(",", "\\,", StringComparison.Ordinal);

    [GeneratedRegex(@"\$\{(?<number>\d+)(:(?<example>[^}]*)|\|(?<example>[^,|]*)(?<others>,[^|]*)\|)\}")]
    private static partial Regex Hole();

    [GeneratedRegex(@"^[\p{L}_][\p{L}\p{N}_]*(\[[\p{L}\p{N}_, ]*\])?$")]
    private static partial Regex Word();
}
