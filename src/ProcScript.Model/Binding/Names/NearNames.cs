using System.Collections.Immutable;
using System.Numerics;
using ProcScript.Model.Binding.Findings;

namespace ProcScript.Model.Binding.Names;

/// <summary>Finds the names that somebody probably meant: few, and the closest.</summary>
public sealed class NearNames
{
    private const int MostSuggestions = 3;

    private readonly ImmutableArray<(string Name, ulong Letters)> _names;

    /// <summary>The names to choose from.</summary>
    public NearNames(IEnumerable<string> names) =>
        _names = [.. names.Distinct(StringComparer.Ordinal).Select(name => (name, LettersOf(name)))];

    /// <summary>The names near to <paramref name="wanted"/>, at most three: the closest, in ordinal order.</summary>
    /// <param name="wanted">The name as written.</param>
    /// <param name="sink">The piece of binding that asks: its questions are counted.</param>
    /// <param name="isChoice">Which of the names are in scope; null for all.</param>
    internal ImmutableArray<string> Find(string wanted, FindingSink sink, Func<string, bool>? isChoice = null) =>
        wanted.Length == 0 || !sink.MaySuggest() ? [] : Find(wanted, isChoice);

    /// <summary>The names near to <paramref name="wanted"/>, at most three: the closest, in ordinal order.</summary>
    /// <param name="wanted">The name as written.</param>
    /// <param name="isChoice">Which of the names are in scope; null for all.</param>
    public ImmutableArray<string> Find(string wanted, Func<string, bool>? isChoice = null)
    {
        ArgumentNullException.ThrowIfNull(wanted);

        var limit = LimitFor(wanted);
        var letters = LettersOf(wanted);
        var found = new List<(int Distance, string Name)>();
        foreach (var (name, itsLetters) in _names)
        {
            // Each edit changes at most two letters of the set; most names fall here without a closer look.
            if (Math.Abs(name.Length - wanted.Length) <= limit && BitOperations.PopCount(letters ^ itsLetters) <= 2 * limit)
            {
                var distance = EditDistance.Between(wanted, name, limit);
                if (distance <= limit && !DifferInFiguresOnly(wanted, name) && (isChoice is null || isChoice(name)))
                {
                    found.Add((distance, name));
                }
            }
        }

        if (found.Count == 0)
        {
            return [];
        }

        // One that is closer than the rest is the one.
        var best = found.Min(one => one.Distance);
        return [.. found.Where(one => one.Distance == best)
            .OrderBy(one => one.Name, StringComparer.Ordinal)
            .Take(MostSuggestions)
            .Select(one => one.Name)];
    }

    /// <summary>A fifth bolt where there are four is no slip of the finger; two figures that have changed places are.</summary>
    private static bool DifferInFiguresOnly(string wanted, string name)
    {
        if (wanted.Length != name.Length)
        {
            return false;
        }

        var first = wanted.AsSpan().CommonPrefixLength(name);
        if (first + 1 < name.Length
            && wanted[first] == name[first + 1]
            && wanted[first + 1] == name[first]
            && wanted.AsSpan(first + 2).SequenceEqual(name.AsSpan(first + 2)))
        {
            return false;
        }

        for (var index = 0; index < wanted.Length; index++)
        {
            if (wanted[index] != name[index] && !(char.IsAsciiDigit(wanted[index]) && char.IsAsciiDigit(name[index])))
            {
                return false;
            }
        }

        return true;
    }

    private static int LimitFor(string wanted) => wanted.Length switch
    {
        <= 2 => 0,
        <= 5 => 1,
        <= 11 => 2,
        _ => 3,
    };

    private static ulong LettersOf(string name)
    {
        var letters = 0UL;
        foreach (var letter in name)
        {
            letters |= 1UL << (char.ToLowerInvariant(letter) & 63);
        }

        return letters;
    }
}
