using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>A parameter of the procedure with its value.</summary>
/// <param name="Name">The parameter.</param>
/// <param name="Value">The value that this plan has for it.</param>
public sealed record PlanParameter(string Name, string Value);

/// <summary>An action by its verb and its item.</summary>
/// <param name="Verb">The verb's word in the language.</param>
/// <param name="Item">The item's name.</param>
public sealed record PlanAction(string Verb, string Item)
{
    /// <summary>Of a control, the position that is set; empty where any is meant.</summary>
    public string Position { get; init; } = "";
}

/// <summary>An order that the author asks of the refit.</summary>
/// <param name="Earlier">What goes first.</param>
/// <param name="Later">What goes later.</param>
public sealed record PlanRule(PlanAction Earlier, PlanAction Later);

/// <summary>An item that the plan is about, and how it hangs together with others; all are named as in the sources.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Sort"><c>part</c>, <c>held</c>, <c>wired</c>, <c>piped</c>, <c>cover</c>, <c>energy</c>, <c>fluid</c> or <c>control</c>.</param>
public sealed record PlanItem(string Name, string Title, string Sort)
{
    /// <summary>Of a part, the part that it lies in; else empty, and for a part on the frame.</summary>
    public string Parent { get; init; } = "";

    /// <summary>Of a joint, the parts at its ends, that in whose block it stands first; the frame is empty. A cover has the part of what it covers alone.</summary>
    public ImmutableArray<string> Ends { get; init; } = [];

    /// <summary>Of a joint, how many pieces it has; else 0.</summary>
    public int Count { get; init; }

    /// <summary>Of a joint, the name of its kind; else empty.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Of a cover, the joint or cover that it hides; else empty.</summary>
    public string Covers { get; init; } = "";

    /// <summary>Of a joint, the energy that has to be isolated for it; else empty.</summary>
    public string On { get; init; } = "";

    /// <summary>Of a joint, the fluid that has to be out for it; else empty.</summary>
    public string Carries { get; init; } = "";

    /// <summary>Of a control, its positions, home first; else empty.</summary>
    public ImmutableArray<string> Positions { get; init; } = [];
}
