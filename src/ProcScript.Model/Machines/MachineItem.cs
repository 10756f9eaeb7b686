using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>Something of a machine that a procedure can name.</summary>
public abstract class MachineItem
{
    /// <summary>The name with its index, as in <c>pillar_trim[left]</c>: unique in its machine.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it; made from the name where no title is written.</summary>
    public required string Title { get; init; }

    /// <summary>Where its name is declared.</summary>
    public required SourceSpan Declared { get; init; }

    /// <summary>The first thing in its block; null where it has none, or an empty one, and for joints, covers and controls.</summary>
    public SourceSpan? Block { get; init; }

    /// <summary>Its place among the items of its own sort, from 0 in the order of declaration.</summary>
    public required int Index { get; init; }

    /// <summary>What must be true to get at it, written on the item itself.</summary>
    public ImmutableArray<Condition> Conditions { get; internal set; } = [];

    /// <summary>The tools it takes, beside those of its kind.</summary>
    public ImmutableArray<Catalog.Tool> Tools { get; internal set; } = [];

    /// <summary>What somebody must hold to work on it (of a joint: by its kind's words too).</summary>
    public ImmutableArray<Catalog.Certificate> Certificates { get; internal set; } = [];

    /// <summary>The place in which one works on it; <see cref="Workplace.None"/> where it says that there is none, null where nothing is said.</summary>
    public Workplace? In { get; internal set; }

    /// <summary>Protective equipment for work on it.</summary>
    public ImmutableArray<string> Ppe { get; internal set; } = [];

    /// <summary>Alerts that stand, once a card, before the first action that touches it or what frees it.</summary>
    public ImmutableArray<Procedures.Alert> Alerts { get; internal set; } = [];

    /// <summary>The pictures that stand at the steps that take it off and put it back.</summary>
    public ImmutableArray<Figures.Figure> Figures { get; internal set; } = [];

    /// <summary>What it can do to people (of a joint: its kind's too).</summary>
    public ImmutableArray<Hazard> Hazards { get; internal set; } = [];

    /// <summary>The time of an action on it (of a joint: for one), where written.</summary>
    public Quantities.Quantity? Time { get; internal set; }

    /// <summary>What putting it back uses up (of a joint: for one).</summary>
    public ImmutableArray<Catalog.SupplyUse> Uses { get; internal set; } = [];

    /// <summary>
    /// Whether it is only there for the job: a part that starts out and must end out; a joint that ties one to the rest, or covers such a
    /// joint, and so starts off and must end off.
    /// </summary>
    public bool IsTemporary { get; internal set; }

    /// <summary>
    /// What is capped while it is off: the openings of one piece of a joint, by its own words or its kind's; the hole that a part leaves. Null
    /// where nothing has to be.
    /// </summary>
    public Catalog.CapUse? Cap { get; internal set; }

    /// <summary>Whether it goes back into the place that it came from, and into no other like it (of a joint: each piece, by its kind's words too).</summary>
    public bool KeepInOrder { get; internal set; }

    /// <summary>The marks that are made across a part and what it sits on, or across a joint, before they part.</summary>
    public ImmutableArray<string> Marks { get; internal set; } = [];

    /// <summary>What is measured on what comes off, such as its thickness; null where nothing is.</summary>
    public string? Measured { get; internal set; }
}
