using ProcScript.Model.Names;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>Finds the part that each joint ties: the one that its name speaks of, else the one that comes off next.</summary>
/// <param name="procedures">The procedures.</param>
/// <param name="declared">What the machine has.</param>
/// <param name="items">What it lacks; parts may be added.</param>
/// <param name="facts">What is known beside the steps.</param>
internal sealed class JointOwners(
    IReadOnlyList<ProcedureMentions> procedures, DeclaredItems declared, OrderedDictionary<string, DraftedItem> items, DraftFacts facts)
{
    /// <summary>Finds them.</summary>
    public void Find()
    {
        foreach (var item in items.Values.Where(item => item.IsJoint && item.Facts.Owner is not null))
        {
            item.Owner = item.Facts.Owner!;
        }

        foreach (var procedure in procedures)
        {
            Find(procedure);
        }

        foreach (var joint in items.Values.Where(item => item.IsJoint).ToList())
        {
            if (joint.Owner.Length == 0)
            {
                joint.Owner = ByName(joint.Name) ?? Made(joint);
            }
            else if (!declared.Has(joint.Owner) && !items.ContainsKey(joint.Owner))
            {
                Add(joint.Owner);
            }

            TakeIndex(joint);
        }
    }

    private void Find(ProcedureMentions procedure)
    {
        var open = new List<DraftedItem>();
        var fitted = "";
        foreach (var mention in procedure.Items.Where(mention => mention.InStrip))
        {
            if (items.TryGetValue(mention.Name, out var item) && item is { IsJoint: true, Owner.Length: 0 })
            {
                if (fitted.Length > 0 && mention.Verb is "fasten" or "engage" or "plug" or "connect")
                {
                    item.Owner = fitted;
                }
                else if (!open.Contains(item))
                {
                    open.Add(item);
                }
            }
            else if (mention.Verb == "fit")
            {
                fitted = mention.Name;
            }
            else if (mention.Clears)
            {
                foreach (var joint in open)
                {
                    Give(joint, mention.Name);
                }

                open.Clear();
            }
        }
    }

    private void Give(DraftedItem joint, string next)
    {
        joint.Owner = ByName(joint.Name) ?? next;
        if (CanonicalName.Base(joint.Owner) != CanonicalName.Base(next) && !declared.Has(next) && items.GetValueOrDefault(next)?.IsTemporary != true)
        {
            joint.Questions.Add($"{DraftWords.Does(joint.Title)} the {joint.Title} hold the {DraftWords.Words(joint.Owner)} or the {DraftWords.Words(next)}?");
        }
    }

    /// <summary>The part whose name a joint's name begins with; of several the longest. An index has to be the same where both have one.</summary>
    private string? ByName(string joint)
    {
        var (stem, index) = Split(joint);
        return declared.Parts.Concat(items.Values.Where(item => item.Sort == ItemSort.Part).Select(item => item.Name))
            .Where(part => stem.StartsWith(CanonicalName.Base(part) + "_", StringComparison.Ordinal) && (Split(part).Index is var own && (own.Length == 0 || own == index)))
            .MaxBy(part => CanonicalName.Base(part).Length);
    }

    /// <summary>Nothing comes off after it: it ties something that no step speaks of.</summary>
    private string Made(DraftedItem joint)
    {
        var (stem, index) = Split(joint.Name);
        var cut = stem.LastIndexOf('_');
        var name = (cut > 0 ? stem[..cut] : "body") + index;
        if ((declared.Has(name) && declared.Part(name) is null) || !NameText.IsName(CanonicalName.Base(name)))
        {
            name = stem + "_part" + index;
        }

        if (!declared.Has(name) && items.GetValueOrDefault(name) is not { Sort: ItemSort.Part })
        {
            name = items.ContainsKey(name) ? stem + "_part" + index : name;
            Add(name);
            joint.Questions.Add($"what {DraftWords.Does(joint.Title)} the {joint.Title} hold?");
        }

        return name;
    }

    private void Add(string part) => items.TryAdd(part, new DraftedItem(part, ItemSort.Part, facts.Of(part)));

    /// <summary>A joint inside a part of a loop goes by the variables of that loop.</summary>
    private void TakeIndex(DraftedItem joint)
    {
        var (stem, index) = Split(joint.Name);
        if (index.Length > 0 && declared.Part(joint.Owner) is { Name.Indices: { IsEmpty: false } own } part && own.Length == index.Count(letter => letter == ',') + 1)
        {
            joint.Name = stem + part.Name.Written[part.Name.Name.Text.Length..];
        }
    }

    private static (string Stem, string Index) Split(string name)
    {
        var stem = CanonicalName.Base(name);
        return (stem, name[stem.Length..]);
    }
}
