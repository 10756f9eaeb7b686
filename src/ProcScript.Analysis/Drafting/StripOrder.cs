using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Drafting;

/// <summary>Guesses from the order of the steps what hides what, what is on which energy, and what carries which fluid.</summary>
/// <param name="procedures">The procedures.</param>
/// <param name="items">What the machine lacks.</param>
/// <param name="declared">What it has.</param>
internal sealed class StripOrder(IReadOnlyList<ProcedureMentions> procedures, OrderedDictionary<string, DraftedItem> items, DeclaredItems declared)
{
    /// <summary>Guesses for an item. What a procedure would contradict is not guessed.</summary>
    public void Guess(DraftedItem item)
    {
        switch (item.Sort)
        {
            case ItemSort.Part when !item.IsTemporary:
                GuessHider(item);
                break;
            case ItemSort.Connector:
                GuessSource(item, "on", "isolate", $"which energy is on the {item.Title}, or none?");
                break;
            case ItemSort.Line:
                GuessSource(item, "carries", "empty", $"what runs in the {item.Title}, or nothing?");
                break;
        }
    }

    private void GuessHider(DraftedItem part)
    {
        foreach (var procedure in procedures)
        {
            var at = procedure.Items.IndexOf(procedure.Items.FirstOrDefault(mention => mention.Clears && mention.Name == part.Name)!);
            var before = at < 0 ? null : procedure.Items.Take(at).LastOrDefault(mention => mention.Clears && mention.Base != part.Name && IsPart(mention.Name));
            if (before is null)
            {
                continue;
            }

            if (GuessFlap(procedure, before, part))
            {
                return;
            }

            var bare = DraftWords.Words(before.Name);
            var title = items.TryGetValue(before.Name, out var hider) ? hider.Title : bare;
            if (procedures.All(one => IsGoneBefore(one, mention => mention.Clears && mention.Name == before.Name, mention => Touches(mention, part)))
                && !HidesAlready(before.Name, part.Name))
            {
                part.Guesses.Add(($"behind {before.Name}", $"{DraftWords.Is(part.Title)} the {part.Title} behind the {title}?"));
            }

            return;
        }
    }

    /// <summary>A flap or a cap that nothing holds, and that comes off right before the screws of a part, hides these and not the part.</summary>
    private bool GuessFlap(ProcedureMentions procedure, Mention flap, DraftedItem part)
    {
        var steps = procedure.Items.Where(mention => mention.InStrip && mention.Verb.Length > 0).ToList();
        var at = steps.IndexOf(flap);
        if (!JointCovers.IsCover(flap.Name) || items.Values.Any(item => item.IsJoint && item.Owner == flap.Name) || at + 1 >= steps.Count || items.GetValueOrDefault(steps[at + 1].Name) is not { Sort: ItemSort.Fastener, Covers: "" } joint || joint.Owner != part.Name
            || !procedures.All(one => IsGoneBefore(one, mention => mention.Clears && mention.Name == flap.Name, mention => mention.InStrip && mention.Name == joint.Name)))
        {
            return false;
        }

        var title = items.TryGetValue(flap.Name, out var hider) ? hider.Title : DraftWords.Words(flap.Name);
        joint.Guesses.Add(($"behind {flap.Name}", $"{DraftWords.Is(joint.Title)} the {joint.Title} behind the {title}, or the whole {part.Title}?"));
        return true;
    }

    /// <summary>Whether one item is guessed to hide another, however far round: two that hide each other never come off.</summary>
    private bool HidesAlready(string hidden, string hider) =>
        items.TryGetValue(hidden, out var item)
        && item.Guesses.Select(guess => guess.Clause["behind ".Length..]).Any(next => next == hider || HidesAlready(next, hider));

    private void GuessSource(DraftedItem joint, string clause, string verb, string question)
    {
        var sources = procedures
            .SelectMany(procedure => procedure.Items.TakeWhile(mention => !(mention.InStrip && mention.Name == joint.Name)).Where(mention => mention.InStrip && mention.Verb == verb))
            .Select(mention => mention.Name).Distinct(StringComparer.Ordinal).ToList();
        if (joint.Facts.Properties.Any(property => property.StartsWith(clause, StringComparison.Ordinal)))
        {
            return;
        }

        if (sources is [var source]
            && procedures.All(one => IsGoneBefore(one, mention => mention.InStrip && mention.Verb == verb && mention.Name == source, mention => mention.InStrip && mention.Name == joint.Name)))
        {
            var title = items.TryGetValue(source, out var known) ? known.Title : DraftWords.Words(source);
            joint.Guesses.Add(($"{clause} {source}", verb == "isolate"
                ? $"{DraftWords.Is(joint.Title)} the {joint.Title} on the {title}?"
                : $"{DraftWords.Does(joint.Title)} the {joint.Title} carry the {title}?"));
        }
        else
        {
            joint.Questions.Add(question);
        }
    }

    private static bool IsGoneBefore(ProcedureMentions procedure, Func<Mention, bool> goes, Func<Mention, bool> touches)
    {
        var touched = procedure.Items.FirstOrDefault(touches);
        return touched is null || procedure.Items.TakeWhile(mention => !ReferenceEquals(mention, touched)).Any(goes);
    }

    private bool Touches(Mention mention, DraftedItem part) => mention.InStrip
        && (mention.Name == part.Name || (items.TryGetValue(mention.Name, out var item) && item.IsJoint && item.Owner == part.Name));

    private bool IsPart(string name) => declared.IsA<PartSyntax>(name) || items.GetValueOrDefault(name)?.Sort == ItemSort.Part;
}
