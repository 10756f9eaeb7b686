using System.Collections.Immutable;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// Counts how often somebody lays tools down to take up others. In hand is what was taken up last; a step that takes no other tool
/// than those, or none at all, changes nothing, and one that takes another has what it takes in hand from then on. Taking up the
/// first tools is no change.
/// </summary>
/// <param name="inHand">What is in hand before; null for nothing yet.</param>
internal sealed class ToolChanges(ImmutableArray<string>? inHand)
{
    /// <summary>How long a change takes, in seconds: 3 to 5 s, common practice, from memory.</summary>
    public const double SecondsEach = 4;

    /// <summary>The changes so far.</summary>
    public int Count { get; private set; }

    /// <summary>What is in hand; null before the first tool.</summary>
    public ImmutableArray<string>? InHand { get; private set; } = inHand;

    /// <summary>The changes over all that is done, in order.</summary>
    public static int Of(IEnumerable<ImmutableArray<string>> tools)
    {
        var changes = new ToolChanges(null);
        foreach (var step in tools)
        {
            changes.Take(step);
        }

        return changes.Count;
    }

    /// <summary>
    /// How many changes no order of this work can do without: each set of tools that is not part of another has to be taken up once, and
    /// only the first of all without laying something down.
    /// </summary>
    /// <param name="tools">The tools of each piece of work.</param>
    /// <param name="inHand">What is in hand before; null for nothing yet.</param>
    public static int Fewest(ImmutableArray<ImmutableArray<string>> tools, ImmutableArray<string>? inHand)
    {
        List<ImmutableArray<string>> largest = [];
        foreach (var set in tools)
        {
            if (!Suffice(inHand ?? [], set))
            {
                AddLargest(largest, set);
            }
        }

        return inHand is null ? Math.Max(0, largest.Count - 1) : largest.Count;
    }

    private static void AddLargest(List<ImmutableArray<string>> largest, ImmutableArray<string> set)
    {
        if (!largest.Exists(other => Suffice(other, set)))
        {
            largest.RemoveAll(other => Suffice(set, other));
            largest.Add(set);
        }
    }

    /// <summary>Goes on with what takes these tools.</summary>
    public void Take(ImmutableArray<string> tools)
    {
        if (!Suffice(InHand ?? [], tools))
        {
            Count += InHand is null ? 0 : 1;
            InHand = tools;
        }
    }

    /// <summary>Whether some tools are all that something takes. They are so few that looking through them is quicker than any set.</summary>
    public static bool Suffice(ImmutableArray<string> tools, ImmutableArray<string> taken)
    {
        foreach (var tool in taken)
        {
            if (!tools.Contains(tool))
            {
                return false;
            }
        }

        return true;
    }
}
