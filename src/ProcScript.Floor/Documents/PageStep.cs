using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Floor.Documents;

/// <summary>A step as a tablet shows it. Texts in <c>How</c>, <c>Checks</c> and alerts are HTML.</summary>
public sealed record PageStep
{
    /// <summary>The number.</summary>
    public required int Number { get; init; }

    /// <summary>What to do.</summary>
    public required string Text { get; init; }

    /// <summary>Where.</summary>
    public string Where { get; init; } = "";

    /// <summary>The item's name; empty where there is none.</summary>
    public string Item { get; init; } = "";

    /// <summary>How many pieces it moves; 0 where it moves none.</summary>
    public int Count { get; init; }

    /// <summary>Alerts before it.</summary>
    public ImmutableArray<PageAlert> Alerts { get; init; } = [];

    /// <summary>What is worked down, in this order, where an energy goes or comes.</summary>
    public ImmutableArray<PageSafety> Safe { get; init; } = [];

    /// <summary>How it is done.</summary>
    public ImmutableArray<string> How { get; init; } = [];

    /// <summary>What to see to before it is started: photos and marks.</summary>
    public ImmutableArray<PageFact> Before { get; init; } = [];

    /// <summary>What to see to beside it.</summary>
    public ImmutableArray<string> Ticks { get; init; } = [];

    /// <summary>The marks that have to line up.</summary>
    public ImmutableArray<string> LineUp { get; init; } = [];

    /// <summary>What to check once it is done.</summary>
    public ImmutableArray<string> Checks { get; init; } = [];

    /// <summary>What it takes: tools, equipment, new parts, what is used up. What stands out first.</summary>
    public ImmutableArray<PageFact> Facts { get; init; } = [];

    /// <summary>The torque in words; empty where there is none.</summary>
    public string Torque { get; init; } = "";

    /// <summary>Which way to turn; empty where it is the usual.</summary>
    public string Turn { get; init; } = "";

    /// <summary>The bags that it fills or empties.</summary>
    public ImmutableArray<int> Bags { get; init; } = [];

    /// <summary>The bags that are empty once it is done.</summary>
    public ImmutableArray<int> EmptiesBags { get; init; } = [];

    /// <summary>Where the part is put; empty where that is not said.</summary>
    public string Store { get; init; } = "";

    /// <summary>What is read, or null.</summary>
    public PageReading? Reading { get; init; }

    /// <summary>Whether a second person signs.</summary>
    public bool Signed { get; init; }

    /// <summary>The time, in seconds.</summary>
    public double Seconds { get; init; }

    /// <summary>The steps that must go before it.</summary>
    public ImmutableArray<int> Earlier { get; init; } = [];

    /// <summary>The energies that stand otherwise after it.</summary>
    public ImmutableArray<PageTurn> Turns { get; init; } = [];

    /// <summary>The pictures.</summary>
    public ImmutableArray<PlanFigure> Figures { get; init; } = [];
}

/// <summary>A line of making an energy safe, or of bringing it back.</summary>
/// <param name="Action">What is done, in a word or two.</param>
/// <param name="Html">How.</param>
/// <param name="IsUsual">Whether that is what is usual, because the author says nothing of it.</param>
public sealed record PageSafety(string Action, string Html, bool IsUsual);

/// <summary>Something that a step takes.</summary>
/// <param name="Sort">What sort of thing, as the page's words call it: <c>tools</c>.</param>
/// <param name="Text">What.</param>
public sealed record PageFact(string Sort, string Text);

/// <summary>What is read at a step, and what it must be: a tablet without a network says at once whether it is right.</summary>
/// <param name="Text">What is read; empty where it is what proves an energy to be off.</param>
/// <param name="Limits">What it must be, in words; empty where it may be anything.</param>
/// <param name="Unit">The unit of the numbers; empty where there are none.</param>
/// <param name="Low">The least that is right; null where there is none.</param>
/// <param name="High">The most that is right; null where there is none.</param>
/// <param name="WithoutEnds">Whether least and most themselves are not right.</param>
public sealed record PageReading(string Text, string Limits, string Unit, double? Low, double? High, bool WithoutEnds);

/// <summary>An energy that stands otherwise after a step.</summary>
/// <param name="Energy">Its name.</param>
/// <param name="State"><c>live</c>, <c>unproved</c> or <c>isolated</c>.</param>
public sealed record PageTurn(string Energy, string State);
