using System.Collections.Immutable;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Machines;

/// <summary>A fluid that lines carry.</summary>
public sealed class Fluid : MachineItem
{
    /// <summary>The nameplate charge.</summary>
    public Quantity? Charge { get; internal set; }

    /// <summary>What new parts add to it or take from it.</summary>
    public ImmutableArray<ChargeChange> Changes { get; internal set; } = [];

    /// <summary>How to empty it.</summary>
    public string? Empty { get; internal set; }

    /// <summary>How to fill it.</summary>
    public string? Fill { get; internal set; }

    /// <summary>The author's verbs for emptying and filling it; null for the usual ones.</summary>
    public VerbPair? Verbs { get; internal set; }

    /// <summary>How long emptying or filling takes.</summary>
    public Quantity? Takes { get; internal set; }

    /// <summary>How much of that somebody has to stand by.</summary>
    public Quantity? Attended { get; internal set; }
}
