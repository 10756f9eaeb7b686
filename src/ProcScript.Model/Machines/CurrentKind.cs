namespace ProcScript.Model.Machines;

/// <summary>What sort of current an electrical energy drives.</summary>
public enum CurrentKind
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>Alternating current.</summary>
    Alternating,

    /// <summary>Direct current.</summary>
    Direct,
}
