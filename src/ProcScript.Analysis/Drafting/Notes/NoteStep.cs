namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Where a step of notes belongs.</summary>
internal enum NotePhase
{
    /// <summary>Into a stage.</summary>
    Strip,

    /// <summary>Into the work.</summary>
    Work,

    /// <summary>Into the refit.</summary>
    Refit,
}

/// <summary>A step that was read from notes.</summary>
/// <param name="phase">Where it belongs.</param>
/// <param name="verb">The verb of the language; empty where <see cref="Text"/> is all of it.</param>
internal sealed class NoteStep(NotePhase phase, string verb)
{
    /// <summary>Where it belongs.</summary>
    public NotePhase Phase => phase;

    /// <summary>The verb of the language.</summary>
    public string Verb => verb;

    /// <summary>What it is done to; for hardware of which nothing is said but what it is, filled in once its part is known.</summary>
    public string Item { get; set; } = "";

    /// <summary>The hardware that still wants the name of its part, such as <c>bolts</c>; empty where the item has its name.</summary>
    public string Hardware { get; set; } = "";

    /// <summary>Count and kind, such as <c>4 m10x30</c>; empty where they are not known.</summary>
    public string Pieces { get; init; } = "";

    /// <summary>How many pieces the hardware has that still wants its name; 0 where nobody says.</summary>
    public int Amount { get; set; }

    /// <summary>The position of a control.</summary>
    public string Position { get; init; } = "";

    /// <summary>What stands in the block of the step.</summary>
    public List<string> Properties { get; } = [];

    /// <summary>A whole sentence of the language; empty where verb and item say it.</summary>
    public string Text { get; set; } = "";

    /// <summary>Whether a lock, a lever or a tab is moved by it, so that what comes next lets go.</summary>
    public bool IsUnlocking { get; init; }

    /// <summary>What is to be asked about it; empty for nothing.</summary>
    public string Question { get; set; } = "";

    /// <summary>The heading that it is the first step below; empty for none.</summary>
    public string Heading { get; set; } = "";

    /// <summary>Of what opens a lock, what that is on; empty where nothing is said.</summary>
    public string Unlocks { get; init; } = "";

    /// <summary>The sentence that it comes from.</summary>
    public string Said { get; set; } = "";

    /// <summary>What notes say before it that is no part of any step, line by line.</summary>
    public List<string> Remarks { get; } = [];

    /// <summary>Puts a sentence into its block, in place of one that begins alike.</summary>
    public void Say(string property)
    {
        Properties.RemoveAll(one => one.Split(' ')[0] == property.Split(' ')[0]);
        Properties.Add(property);
    }

    /// <summary>The step as the language writes it.</summary>
    public string Written()
    {
        if (Text.Length > 0)
        {
            return Text;
        }

        var pieces = Pieces.Length == 0 ? "" : Pieces + " ";
        var position = Position.Length == 0 ? "" : $" to {Position}";
        var block = Properties.Count == 0 ? "" : $" {{ {string.Join("  ", Properties)} }}";
        return $"{verb} {pieces}{Item}{position}{block}";
    }
}
