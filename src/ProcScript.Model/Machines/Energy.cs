using System.Collections.Immutable;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Machines;

/// <summary>An energy that can hurt.</summary>
public sealed class Energy : MachineItem
{
    /// <summary>The energies that must be isolated before it. Its conditions say so too, in both directions.</summary>
    public ImmutableArray<Energy> After { get; internal set; } = [];

    /// <summary>What to know and have at hand before it is shut down.</summary>
    public string? Prepare { get; internal set; }

    /// <summary>How to shut the machine down in an orderly way.</summary>
    public string? Shutdown { get; internal set; }

    /// <summary>How to isolate it.</summary>
    public string? Isolate { get; internal set; }

    /// <summary>How to hold the isolating device safe or off.</summary>
    public string? Lock { get; internal set; }

    /// <summary>How to let out what is stored.</summary>
    public string? Bleed { get; internal set; }

    /// <summary>How long to wait after.</summary>
    public Quantity? Wait { get; internal set; }

    /// <summary>How to verify that it is off.</summary>
    public string? Verify { get; internal set; }

    /// <summary>What the reading must be.</summary>
    public Limit? VerifyExpect { get; internal set; }

    /// <summary>Where that is done; null where it is not said, so that it is done where the energy is isolated.</summary>
    public VerifyPlace? VerifyAt { get; internal set; }

    /// <summary>The nominal voltage; null where not said.</summary>
    public Quantity? Voltage { get; internal set; }

    /// <summary>Whether that is an alternating or a direct voltage.</summary>
    public CurrentKind Current { get; internal set; }

    /// <summary>How to restore it.</summary>
    public string? Restore { get; internal set; }

    /// <summary>The author's verbs for isolating and restoring it; null for the usual ones.</summary>
    public VerbPair? Verbs { get; internal set; }
}
