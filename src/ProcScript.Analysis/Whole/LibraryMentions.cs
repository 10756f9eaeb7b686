using System.Collections.Immutable;

namespace ProcScript.Analysis.Whole;

/// <summary>The names that a library mentions, counted, so that a changed file is taken out and in again without a look at the others.</summary>
internal sealed class LibraryMentions
{
    private readonly Dictionary<string, int> _counts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ImmutableArray<MentionedNames>> _files = new(StringComparer.Ordinal);

    /// <summary>Whether a name is mentioned somewhere.</summary>
    public bool Holds(string name) => _counts.ContainsKey(name);

    /// <summary>Takes a file in, or in the place of the one that had its path.</summary>
    /// <returns>Whether a name is mentioned now that was not, or the other way.</returns>
    public bool Set(string path, ImmutableArray<MentionedNames> now)
    {
        var before = _files.GetValueOrDefault(path, []);
        _files[path] = now;
        var isOther = false;
        foreach (var name in now.Except(before).SelectMany(piece => piece.Names))
        {
            isOther |= !_counts.TryGetValue(name, out var count);
            _counts[name] = count + 1;
        }

        foreach (var name in before.Except(now).SelectMany(piece => piece.Names))
        {
            if (--_counts[name] == 0)
            {
                _counts.Remove(name);
                isOther = true;
            }
        }

        return isOther;
    }
}
