using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>The thing that a sentence of notes is about.</summary>
/// <param name="Words">The thing without articles: <c>guard bolts</c>.</param>
/// <param name="Sort">What sort of hardware, energy or fluid its last word speaks of; null for any other thing.</param>
/// <param name="Of">What it belongs to or holds; empty where nothing is said.</param>
/// <param name="At">Where it is, in words; empty where nothing is said.</param>
/// <param name="More">What else the sentence says.</param>
internal sealed record NoteObject(string Words, ItemSort? Sort, string Of, string At, string More)
{
    private static readonly FrozenSet<string> Fillers = new[]
    {
        "the", "a", "an", "its", "all", "each", "these", "those", "any", "of", "your", "remaining", "main", "old", "off", "out", "up", "carefully", "both", "other", "and", "then", "+", "&",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly ImmutableArray<string> Belonging =
        [" that holds ", " that hold ", " holds ", " hold ", " secures ", " secure ", " which holds ", " which hold ", " holding ", " securing ", " retaining ", " from ", " of ", " for ", " on to ", " to "];

    private static readonly ImmutableArray<string> Places =
        [" at ", " in ", " behind ", " under ", " underneath ", " below ", " above ", " along ", " round ", " around ", " inside ", " beneath ", " near ", " beside ", " either side", " on either side", " each side", " by the ", " next to ",
         " on each side", " all round", " all the way round", " from below", " from above", " from behind", " from inside", " from outside", " from underneath", " from under "];

    private static readonly ImmutableArray<string> Manners =
        [" with ", " using ", " by hand", " through ", " thru ", " via ", " c/w ", " complete with ", " away ", " clear ", " without ", " until ", " while ", " to break ", " to free ", " about ", " into ", " onto ", " if ", " so ", " towards ", " forward ", " forwards "];

    /// <summary>Reads what stands behind a verb, without its figures.</summary>
    public static NoteObject Read(string text)
    {
        var cut = text.IndexOfAny([',', '(', ';', ':']);
        var dash = text.IndexOf(" - ", StringComparison.Ordinal);
        cut = dash >= 0 && (cut < 0 || dash < cut) ? dash : cut;
        var (head, more) = cut < 0 ? (text, "") : (text[..cut], text[cut..].Trim(' ', ',', '(', ')', ';', ':', '-'));
        more = more.Replace("(", "", StringComparison.Ordinal).Replace(")", "", StringComparison.Ordinal);
        head = " " + head.Trim() + " ";
        if (First(head, Manners) is { } manner)
        {
            more = string.Join(", ", new[] { head[manner.Index..].Trim(), more }.Where(one => one.Length > 0));
            head = head[..manner.Index] + " ";
        }

        var (of, at) = ("", "");
        if (Places.Any(word => more.StartsWith(word.TrimStart(), StringComparison.OrdinalIgnoreCase)))
        {
            (at, more) = (more, "");
            if (First(head, Places) is { } nearer)
            {
                at = $"{head[nearer.Index..].Trim()}, {at}";
                head = head[..nearer.Index] + " ";
            }
        }
        else if (First(head, Places) is { } place)
        {
            at = head[place.Index..].Trim();
            head = head[..place.Index] + " ";
        }

        if (First(head, Belonging) is { } belonging)
        {
            of = Bare(head[(belonging.Index + belonging.Word.Length)..]);
            head = head[..belonging.Index] + " ";
        }
        else if (head.IndexOf(" on ", StringComparison.OrdinalIgnoreCase) is > 0 and var on)
        {
            of = Bare(head[(on + " on ".Length)..]);
            head = head[..on] + " ";
        }

        // A capital at the beginning of a sentence is none of the name's.
        var words = Bare(head);
        if (ItemSorts.OfWords(words) is null && words.IndexOf(" and ", StringComparison.OrdinalIgnoreCase) is > 0 and var and && ItemSorts.OfWords(words[..and]) is not null)
        {
            // "pilot lines and cap them"
            (words, more) = (words[..and], string.Join(", ", new[] { words[(and + " and ".Length)..], more }.Where(one => one.Length > 0)));
        }

        words = words.Length > 1 && char.IsUpper(words[0]) && words.TakeWhile(letter => letter != ' ').Skip(1).All(char.IsLower) ? char.ToLowerInvariant(words[0]) + words[1..] : words;
        return new NoteObject(words, ItemSorts.OfWords(words), of, at, more);
    }

    /// <summary>Words without articles and the like at their beginning and end.</summary>
    public static string Bare(string words)
    {
        var left = words.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries).Select(word => word.Trim('.', '!', '"', '\'')).Where(word => word.Length > 0).ToList();
        while (left.Count > 0 && Fillers.Contains(left[0]))
        {
            left.RemoveAt(0);
        }

        while (left.Count > 0 && Fillers.Contains(left[^1]))
        {
            left.RemoveAt(left.Count - 1);
        }

        return string.Join(' ', left);
    }

    private static (int Index, string Word)? First(string text, ImmutableArray<string> words)
    {
        var found = words.Select(word => (Index: text.IndexOf(word, StringComparison.OrdinalIgnoreCase), word)).Where(one => one.Index > 0).OrderBy(one => one.Index).ToList();
        return found.Count == 0 ? null : found[0];
    }
}
