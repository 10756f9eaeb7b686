using System.Collections.Frozen;
using ProcScript.Model.Names;

namespace ProcScript.Analysis.Drafting;

/// <summary>
/// Guesses what covers or locks a joint: a cap, a flap or a lock that is opened right before it. That it has no part of its own to hold
/// shows only on the machine, so each is asked.
/// </summary>
/// <param name="procedures">The procedures.</param>
/// <param name="items">What the machine lacks.</param>
internal sealed class JointCovers(IReadOnlyList<ProcedureMentions> procedures, OrderedDictionary<string, DraftedItem> items)
{
    private static readonly FrozenSet<string> CoverWords = new[] { "cap", "cover", "lid", "flap", "blank", "bung", "shroud", "trim" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> LockWords = new[]
    {
        "lock", "locking", "lockwire", "split", "cotter", "tab", "safety", "secondary", "lever", "slide", "slider", "latch", "retainer",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether a name speaks of something that hides another.</summary>
    public static bool IsCover(string name) => CoverWords.Contains(DraftWords.Singular(DraftWords.LastWord(name)));

    /// <summary>Guesses them.</summary>
    public void Guess()
    {
        foreach (var procedure in procedures)
        {
            var steps = procedure.Items.Where(mention => mention.InStrip && mention.Verb.Length > 0).ToList();
            for (var at = 0; at + 1 < steps.Count; at++)
            {
                if (items.GetValueOrDefault(steps[at].Name) is { Sort: ItemSort.Clip or ItemSort.Bond, Covers: "" } over
                    && (IsCover(over.Name) || IsLock(over.Name))
                    && Next(steps, at, over) is { } under
                    && procedures.All(one => IsOpenedBefore(one, over, under)))
                {
                    Put(over, under);
                }
            }
        }
    }

    /// <summary>Takes the guesses back, and asks.</summary>
    public void OnlyAsk()
    {
        foreach (var item in items.Values.Where(item => item.Covers.Length > 0))
        {
            item.Questions.Add(Question(item, items[item.Covers]));
            item.Covers = "";
        }
    }

    /// <summary>What is asked of a cover or a lock.</summary>
    public static string Question(DraftedItem over, DraftedItem under) => over.IsLock
        ? $"{DraftWords.Does(over.Title)} the {over.Title} lock the {under.Title}, and {DraftWords.Does(over.Title)} the same go back?"
        : $"{DraftWords.Does(over.Title)} the {over.Title} only cover the {under.Title}?";

    private static void Put(DraftedItem over, DraftedItem under)
    {
        over.Covers = under.Name;
        over.IsLock = IsLock(over.Name);
        over.Owner = under.Owner;
        over.Questions.RemoveAll(question => question.Contains(" hold ", StringComparison.Ordinal));
    }

    /// <summary>The joint that is opened next; further covers of it may come between.</summary>
    private DraftedItem? Next(List<Mention> steps, int at, DraftedItem over)
    {
        for (var next = at + 1; next < steps.Count; next++)
        {
            var item = items.GetValueOrDefault(steps[next].Name);
            if (item is null || !item.IsJoint || item.Sort == ItemSort.Bond)
            {
                return null;
            }

            if (item.Sort != ItemSort.Clip)
            {
                // A lock of a connector or a line goes by its name, or it locks what is turned.
                return CanonicalName.Indices(item.Name).SequenceEqual(CanonicalName.Indices(over.Name)) ? item : null;
            }

            if (!IsCover(item.Name) && !IsLock(item.Name))
            {
                return null;
            }
        }

        return null;
    }

    private static bool IsOpenedBefore(ProcedureMentions procedure, DraftedItem over, DraftedItem under)
    {
        var opened = procedure.Items.FirstOrDefault(mention => mention.InStrip && mention.Name == under.Name);
        return opened is null || procedure.Items.TakeWhile(mention => !ReferenceEquals(mention, opened)).Any(mention => mention.InStrip && mention.Name == over.Name);
    }

    private static bool IsLock(string name) => CanonicalName.Base(name).Split('_').Any(word => LockWords.Contains(DraftWords.Singular(word)));
}
