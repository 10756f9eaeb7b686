using System.Collections.Immutable;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// Counts how often somebody lays tools down to take up others. In hand is what was taken up last; a step that takes no other tool
/// than those, or none at all, changes nothing, and one that takes another has what it takes in hand from then on. Taking up the
/// first tools is no change.
/// </summary>
/// <param name="inHand">What is in hand before; null for nothing yet.</param>
internal sealed class ToolChanges(ImmutableHashSet<string>? inHand)
{
    /// <summary>How long a change takes, in seconds: 3 to 5 s, common practice, from memory.</summary>
    public const double SecondsEach = 4;

    /// <summary>The changes so far.</summary>
    public int Count { get; private set; }

    /// <summary>What is in hand; null before the first tool.</summary>
    public ImmutableHashSet<string>? InHand { get; private set; } = inHand;

    /// <summary>The changes over all that is done, in order.</summary>
    public static int Of(IEnumerable<ImmutableArray<string>> tools)
    {
        var changes = new ToolChanges(null);
        foreach (var step in tools)
        {
            changes.Take([.. step]);
        }

        return changes.Count;
    }

    /// <summary>
    /// How many changes no order of this work can do without: each set of tools that is not part of another has to be taken up once, and
    /// only the first of all without laying something down.
    /// </summary>
    /// <param name="tools">The tools of each piece of work.</param>
    /// <param name="inHand">What is in hand before; null for nothing yet.</param>
    public static int Fewest(IEnumerable<ImmutableHashSet<string>> tools, ImmutableHashSet<string>? inHand)
    {
        List<ImmutableHashSet<string>> largest = [];
        foreach (var set in tools)
        {
            if (set.IsEmpty || (inHand is not null && set.IsSubsetOf(inHand)) || largest.Exists(set.IsSubsetOf))
            {
                continue;
            }

            largest.RemoveAll(other => other.IsSubsetOf(set));
            largest.Add(set);
        }

        return inHand is null ? Math.Max(0, largest.Count - 1) : largest.Count;
    }

    /// <summary>Goes on with what takes these tools.</summary>
    public void Take(ImmutableHashSet<string> tools)
    {
        if (tools.IsEmpty || (InHand is not null && tools.IsSubsetOf(InHand)))
        {
            return;
        }

        Count += InHand is null ? 0 : 1;
        InHand = tools;
    }
}
