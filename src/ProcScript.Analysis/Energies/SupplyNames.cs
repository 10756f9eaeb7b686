using System.Collections.Frozen;
using System.Text.RegularExpressions;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Energies;

/// <summary>
/// Which energies and fluids of a machine an English text names: by a whole title, or by the noun that a title turns on, <c>gas</c> of
/// <c>natural gas supply</c>. A noun that several share stands for all of them.
/// </summary>
internal sealed partial class SupplyNames
{
    /// <summary>Words that a title ends in and that do not tell one supply from another.</summary>
    private static readonly FrozenSet<string> Common = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase,
        "supply", "circuit", "system", "line", "inlet", "outlet", "feed", "pressure", "power", "main", "charge", "energy", "side", "left", "right", "front", "rear");

    private readonly List<(MachineItem Item, string Title, string Noun)> _names;

    /// <summary>Takes the titles of a machine.</summary>
    public SupplyNames(Machine machine) =>
        _names = [.. machine.Energies.Concat<MachineItem>(machine.Fluids).Select(item => (item, item.Title, Noun(item.Title)))];

    /// <summary>Those that a text names; of whole titles and nouns, the whole titles count.</summary>
    public IReadOnlyList<MachineItem> In(string text)
    {
        List<MachineItem> whole = [.. _names.Where(name => IsIn(text, name.Title)).Select(name => name.Item)];
        return whole.Count > 0 ? whole : [.. _names.Where(name => name.Noun.Length > 0 && IsIn(text, name.Noun)).Select(name => name.Item)];
    }

    private static string Noun(string title) =>
        Words().Matches(title).Select(word => word.Value).LastOrDefault(word => !Common.Contains(word) && word.Length > 2) ?? "";

    private static bool IsIn(string text, string words)
    {
        for (var at = text.IndexOf(words, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(words, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            var end = at + words.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end])))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Words of letters; what holds a figure is a voltage or a code.</summary>
    [GeneratedRegex(@"(?<![\w-])\p{L}+(?![\w-])", RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}
