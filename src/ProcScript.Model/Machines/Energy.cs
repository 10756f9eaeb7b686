using ProcScript.Model.Quantities;

namespace ProcScript.Model.Machines;

/// <summary>An energy that can hurt.</summary>
public sealed class Energy : MachineItem
{
    /// <summary>How to isolate it.</summary>
    public string? Isolate { get; internal set; }

    /// <summary>How long to wait after.</summary>
    public Quantity? Wait { get; internal set; }

    /// <summary>How to verify that it is off.</summary>
    public string? Verify { get; internal set; }

    /// <summary>What the reading must be.</summary>
    public Limit? VerifyExpect { get; internal set; }

    /// <summary>How to restore it.</summary>
    public string? Restore { get; internal set; }
}
