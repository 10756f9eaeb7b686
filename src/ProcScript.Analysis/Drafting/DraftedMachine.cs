using ProcScript.Model.Names;

namespace ProcScript.Analysis.Drafting;

/// <summary>Works out what a machine lacks from the steps of the procedures on it.</summary>
internal sealed class DraftedMachine
{
    private readonly IReadOnlyList<ProcedureMentions> _procedures;
    private readonly DeclaredItems _declared;
    private readonly DraftFacts _facts;
    private readonly OrderedDictionary<string, DraftedItem> _items = new(StringComparer.Ordinal);

    private DraftedMachine(IReadOnlyList<ProcedureMentions> procedures, DeclaredItems declared, DraftFacts facts) =>
        (_procedures, _declared, _facts) = (procedures, declared, facts);

    /// <summary>What the machine has already.</summary>
    public DeclaredItems Declared => _declared;

    /// <summary>The items that it lacks, in the order in which steps come to them.</summary>
    public IEnumerable<DraftedItem> Items => _items.Values;

    /// <summary>Whether nothing is lacking.</summary>
    public bool IsEmpty => _items.Count == 0;

    /// <summary>Works it out.</summary>
    /// <param name="procedures">The procedures on the machine.</param>
    /// <param name="declared">What the machine has.</param>
    /// <param name="facts">What is known beside the steps.</param>
    /// <param name="guesses">Whether what is only guessed is written, and not only asked.</param>
    public static DraftedMachine Of(IReadOnlyList<ProcedureMentions> procedures, DeclaredItems declared, DraftFacts facts, bool guesses)
    {
        var machine = new DraftedMachine(procedures, declared, facts);
        machine.Collect();
        new JointOwners(procedures, declared, machine._items, facts).Find();
        machine.Aside();
        var covers = new JointCovers(procedures, machine._items);
        covers.Guess();
        var order = new StripOrder(procedures, machine._items, declared);
        foreach (var item in machine._items.Values)
        {
            order.Guess(item);
            Ask(item);
        }

        if (!guesses)
        {
            machine.OnlyAsk();
            covers.OnlyAsk();
        }

        return machine;
    }

    /// <summary>A machine of which all items are known without any steps.</summary>
    /// <param name="items">The items.</param>
    public static DraftedMachine Of(IEnumerable<DraftedItem> items)
    {
        var machine = new DraftedMachine([], new DeclaredItems(null, null), DraftFacts.None);
        foreach (var item in items)
        {
            machine._items.Add(item.Name, item);
        }

        return machine;
    }

    /// <summary>What a step says is a surer sign of a sort than a condition or a goal; what a name sounds like comes last.</summary>
    private void Collect()
    {
        var mentions = _procedures.SelectMany(procedure => procedure.Items).Where(mention => !_declared.Has(mention.Name)).ToList();
        foreach (var mention in mentions.Where(mention => mention.Sort is not null && mention.Verb.Length > 0)
                     .Concat(mentions.Where(mention => mention.Sort is not null))
                     .Concat(mentions))
        {
            var sort = mention.Sort ?? ItemSorts.OfName(mention.Name);
            var item = _items.TryGetValue(mention.Name, out var known) ? known : new DraftedItem(mention.Name, sort, _facts.Of(mention.Name));
            _items.TryAdd(mention.Name, item);
            if (mention.Position is { Length: > 0 } position && !item.Positions.Contains(position))
            {
                item.Positions.Add(position);
            }

            if (item.IsJoint && mention.Pieces is { } pieces && item.Kind.Length == 0)
            {
                item.Kind = pieces.Kind.Text;
            }
        }

        foreach (var item in _items.Values.Where(item => item.IsJoint))
        {
            item.Count = Math.Max(item.Facts.Count, _procedures.Max(procedure => procedure.Items.Where(one => one.Name == item.Name && one.InStrip).Sum(one => one.Amount)));
        }

        foreach (var item in _items.Values)
        {
            var first = _procedures.SelectMany(procedure => procedure.Items).FirstOrDefault(one => one.Name == item.Name && one.InStrip && one.Verb.Length > 0);
            item.IsTemporary = item.Sort == ItemSort.Part && first?.Verb == "fit";
        }
    }

    /// <summary>What was undone or slackened of a part right before it goes aside is what it hangs on.</summary>
    private void Aside()
    {
        foreach (var procedure in _procedures)
        {
            var open = new List<string>();
            foreach (var mention in procedure.Items.Where(mention => mention.InStrip))
            {
                if (_items.TryGetValue(mention.Name, out var item) && item.IsJoint)
                {
                    open.Add(item.Name);
                }
                else if (mention.Verb == "aside" && item is { GoesAside: false })
                {
                    item.GoesAside = true;
                    item.AsideNeeds.AddRange(open.Where(joint => _items[joint].Owner == item.Name).Distinct(StringComparer.Ordinal));
                }
            }
        }
    }

    private static void Ask(DraftedItem item)
    {
        switch (item.Sort)
        {
            case ItemSort.Energy:
                item.Questions.Add($"how is the {item.Title} isolated, locked off and proved to be off, and what can it do to people?");
                break;
            case ItemSort.Fluid when !item.Facts.Properties.Any(property => property.StartsWith("charge", StringComparison.Ordinal)):
                item.Questions.Add($"how much {item.Title} belongs in, and how far off is still right?");
                break;
            case ItemSort.Control:
                item.Questions.Add($"which positions has the {item.Title}, and in which does it stand at the start? That one comes first");
                break;
            case ItemSort.Part when item.IsTemporary:
                item.Questions.Add($"does the {item.Title} go on for the job alone?");
                break;
            case ItemSort.Part when item.GoesAside:
                item.Questions.Add($"how does the {item.Title} go aside, and what must be off or slack before?");
                break;
            case var sort when ItemSorts.IsJoint(sort) && item.Count == 0 && DraftWords.IsPlural(CanonicalName.Base(item.Name)):
                item.Questions.Add($"how many {item.Title}?");
                break;
        }
    }

    /// <summary>What is guessed goes; its questions stay.</summary>
    private void OnlyAsk()
    {
        foreach (var item in _items.Values)
        {
            item.Questions.AddRange(item.Guesses.Select(guess => guess.Question));
            item.Guesses.Clear();
        }
    }
}
