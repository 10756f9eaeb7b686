using System.Collections.Immutable;
using ProcScript.Syntax;

namespace ProcScript.Model;

/// <summary>Compares the trees of a library from one time to the next.</summary>
public static class TreeChanges
{
    /// <summary>The paths that came, went or have another tree from one library to another.</summary>
    /// <param name="before">The library before.</param>
    /// <param name="now">The library now.</param>
    public static HashSet<string> Between(Library before, Library now)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(now);
        return now.Step is { } step && step.IsFrom(before) ? step.Files.ToHashSet(StringComparer.Ordinal) : Between(before.Trees, now.Trees);
    }

    /// <summary>The paths that came, went or have another tree. Where the paths are the same, no tree is looked for.</summary>
    /// <param name="before">The trees before.</param>
    /// <param name="now">The trees now.</param>
    public static HashSet<string> Between(ImmutableSortedDictionary<string, SyntaxTree> before, ImmutableSortedDictionary<string, SyntaxTree> now)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(now);
        var changed = new HashSet<string>(StringComparer.Ordinal);
        if (ReferenceEquals(before, now))
        {
            return changed;
        }

        using var old = before.GetEnumerator();
        using var current = now.GetEnumerator();
        var (hasOld, hasCurrent) = (old.MoveNext(), current.MoveNext());
        while (hasOld || hasCurrent)
        {
            var order = !hasOld ? 1 : !hasCurrent ? -1 : ReferenceEquals(old.Current.Key, current.Current.Key) ? 0 : string.CompareOrdinal(old.Current.Key, current.Current.Key);
            if (order != 0 || !ReferenceEquals(old.Current.Value, current.Current.Value))
            {
                changed.Add(order <= 0 ? old.Current.Key : current.Current.Key);
            }

            hasOld = order > 0 ? hasOld : old.MoveNext();
            hasCurrent = order < 0 ? hasCurrent : current.MoveNext();
        }

        return changed;
    }
}
