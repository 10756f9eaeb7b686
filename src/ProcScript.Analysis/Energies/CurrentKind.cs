namespace ProcScript.Analysis.Energies;

/// <summary>How the current of an energy flows.</summary>
internal enum CurrentKind
{
    /// <summary>Nothing tells.</summary>
    Unknown,

    /// <summary>One way, as from a battery.</summary>
    Direct,

    /// <summary>To and fro, as from the mains.</summary>
    Alternating,
}
