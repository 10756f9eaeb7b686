namespace ProcScript.Analysis.Drafting;

/// <summary>An item that steps name and the machine lacks, with what the steps tell of it.</summary>
/// <param name="name">The name, with its index.</param>
/// <param name="sort">The sort.</param>
/// <param name="facts">What is known of it beside the steps.</param>
internal sealed class DraftedItem(string name, ItemSort sort, ItemFacts facts)
{
    /// <summary>The name as it is declared; an index of the part around takes the place of its own.</summary>
    public string Name { get; set; } = name;

    /// <summary>The sort.</summary>
    public ItemSort Sort => sort;

    /// <summary>What is known of it beside the steps.</summary>
    public ItemFacts Facts => facts;

    /// <summary>What people call it.</summary>
    public string Title { get; } = facts.Title ?? DraftWords.Words(name);

    /// <summary>How many pieces a joint has; 0 where no step says so.</summary>
    public int Count { get; set; }

    /// <summary>The kind of a joint.</summary>
    public string Kind { get; set; } = "";

    /// <summary>The positions of a control that steps name.</summary>
    public List<string> Positions { get; } = [];

    /// <summary>Whether a part goes on for the job alone.</summary>
    public bool IsTemporary { get; set; }

    /// <summary>Whether a part goes aside.</summary>
    public bool GoesAside { get; set; }

    /// <summary>The joints that have to be off or slack before a part goes aside.</summary>
    public List<string> AsideNeeds { get; } = [];

    /// <summary>Of a joint, the part that it ties; empty as long as none is known.</summary>
    public string Owner { get; set; } = "";

    /// <summary>The joint that a cover or a lock is on; empty for what ties parts itself.</summary>
    public string Covers { get; set; } = "";

    /// <summary>Whether it keeps a joint from turning or from letting go, where it is on one.</summary>
    public bool IsLock { get; set; }

    /// <summary>Clauses that are guessed, with the question that each raises: what hides it, what it is on, what it carries.</summary>
    public List<(string Clause, string Question)> Guesses { get; } = [];

    /// <summary>What a list says of a joint that has no place in the language.</summary>
    public List<string> Remarks { get; } = [];

    /// <summary>Questions about what is not guessed.</summary>
    public List<string> Questions { get; } = [.. facts.Questions];

    /// <summary>Whether it ties parts.</summary>
    public bool IsJoint => ItemSorts.IsJoint(sort);
}
