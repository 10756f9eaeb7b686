using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>A tool.</summary>
/// <param name="Title">What it is, with its size; of the torque wrench, with the torques that it has to cover.</param>
/// <param name="FirstStep">The step that first needs it.</param>
/// <param name="Steps">How many steps need it.</param>
public sealed record PlanTool(string Title, int FirstStep, int Steps)
{
    /// <summary>Of caps how many are on at once at the most; 0 of any other tool.</summary>
    public int Count { get; init; }

    /// <summary>Whether it is a crowfoot between a torque wrench and a nut.</summary>
    public bool IsCrowfoot { get; init; }

    /// <summary>Whether it is there for the job as a whole, and not for single steps.</summary>
    public bool OfJob { get; init; }

    /// <summary>Whether every bench of the shop has it.</summary>
    public bool OfHouse { get; init; }
}

/// <summary>What somebody must hold.</summary>
/// <param name="Title">What people call it.</param>
/// <param name="Steps">The steps that ask for it.</param>
public sealed record PlanCertificate(string Title, ImmutableArray<int> Steps);

/// <summary>A place in which only so many people work at once.</summary>
/// <param name="Title">What people call it.</param>
/// <param name="Room">How many.</param>
/// <param name="Steps">The steps that are done in it.</param>
public sealed record PlanPlace(string Title, int Room, ImmutableArray<int> Steps);

/// <summary>New parts that go in with a step.</summary>
/// <param name="Title">What.</param>
/// <param name="Count">How many.</param>
/// <param name="Replaces">The step at which the old ones came off and were scrapped; 0 where they take the place of none.</param>
public sealed record PlanNewPart(string Title, int Count, int Replaces)
{
    /// <summary>The same in words: <c>4 × 10.8 mm O-ring</c>.</summary>
    public string Text => $"{Count} × {Title}";
}

/// <summary>Hardware that stays on its part while it is off, and so lies in no bag: connectors, lines, captive screws.</summary>
/// <param name="Title">The kind.</param>
/// <param name="Count">How many pieces, with every time that they come off.</param>
/// <param name="OffAt">The steps at which they come off.</param>
/// <param name="BackAt">The steps at which they go back; 0 where they do not.</param>
public sealed record PlanStaying(string Title, int Count, ImmutableArray<int> OffAt, ImmutableArray<int> BackAt);

/// <summary>Something to have at hand.</summary>
/// <param name="Title">What.</param>
/// <param name="Count">How many.</param>
/// <param name="Reason"><c>single use</c>, <c>replaced</c>, <c>destroyed</c>, <c>stretch bolt, always new</c> or <c>spare</c>.</param>
/// <param name="Steps">The refit steps that use it.</param>
/// <param name="Uses">The same, with where each is.</param>
public sealed record PlanOrderLine(string Title, int Count, string Reason, ImmutableArray<int> Steps, ImmutableArray<PlanOrderUse> Uses);

/// <summary>Where something to have at hand goes.</summary>
/// <param name="Place">Where: the joint's part and place, or the part; for a spare, those that it may have to stand in for.</param>
/// <param name="Count">How many go in; of spares, how many pieces there are that may break.</param>
/// <param name="StripStep">The step at which the old ones come off; 0 where none does.</param>
/// <param name="RefitStep">The step at which it goes in.</param>
public sealed record PlanOrderUse(string Place, int Count, int StripStep, int RefitStep);

/// <summary>Something used up by amount.</summary>
/// <param name="Title">What.</param>
/// <param name="Amount">How much, in words.</param>
/// <param name="Steps">The steps that use it.</param>
public sealed record PlanConsumable(string Title, string Amount, ImmutableArray<int> Steps);

/// <summary>A control.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Home">The position it must end in.</param>
/// <param name="Positions">All positions.</param>
public sealed record PlanControl(string Name, string Title, string Home, ImmutableArray<string> Positions);

/// <summary>A bag of hardware.</summary>
/// <param name="Number">The number on its label.</param>
/// <param name="Stage">The stage that fills it; of a bag that the author named all of them, with commas.</param>
/// <param name="Contents">What goes in.</param>
/// <param name="EmptyAt">The refit step after which it is empty; 0 where what is in it never goes back.</param>
/// <param name="Name">The author's own name for it; empty where the compiler chose what goes in.</param>
public sealed record PlanBag(int Number, string Stage, ImmutableArray<PlanBagLine> Contents, int EmptyAt, string Name)
{
    /// <summary>The side of the machine that all of it is from, <c>left</c> or <c>right</c>; empty where it is from none or both.</summary>
    public string Side { get; init; } = "";
}

/// <summary>One sort of piece in a bag.</summary>
/// <param name="Title">The kind.</param>
/// <param name="Count">How many.</param>
/// <param name="From">What it held, in words.</param>
/// <param name="StripStep">The step it comes from.</param>
/// <param name="RefitStep">The step it goes back at; 0 where it does not.</param>
public sealed record PlanBagLine(string Title, int Count, string From, int StripStep, int RefitStep)
{
    /// <summary>Whether they are kept in order: each goes back into the place that it came from.</summary>
    public bool InOrder { get; init; }
}

/// <summary>Something that is due once the job is over.</summary>
/// <param name="Text">What, in plain imperative words.</param>
/// <param name="When">When, in the author's words.</param>
/// <param name="Item">The item's name in the sources.</param>
/// <param name="Where">Where it is.</param>
/// <param name="Torque">The torque in words; empty where none is given.</param>
/// <param name="Tools">The titles of the tools.</param>
public sealed record PlanFollowUp(string Text, string When, string Item, string Where, string Torque, ImmutableArray<string> Tools);

/// <summary>Which piece a step is about, where others fit the same holes.</summary>
/// <param name="Piece">The piece, in words that tell it apart.</param>
/// <param name="Bag">Its bag.</param>
/// <param name="Not">The look-alikes that come off or go back on the same card, a few at the most.</param>
public sealed record PlanWhich(string Piece, int Bag, ImmutableArray<PlanLookAlike> Not);

/// <summary>A piece that fits the same holes and must not go in.</summary>
/// <param name="Piece">The piece, in words that tell it apart.</param>
/// <param name="Bag">Its bag.</param>
public sealed record PlanLookAlike(string Piece, int Bag);

/// <summary>Something that does not go back.</summary>
/// <param name="Title">What.</param>
/// <param name="Because">Why; Markdown.</param>
public sealed record PlanDiscard(string Title, string Because)
{
    /// <summary>The item's name; a part is discarded with all that is declared in it, a joint with its covers.</summary>
    public string Item { get; init; } = "";

    /// <summary>The step after which it is discarded.</summary>
    public int After { get; init; }
}
