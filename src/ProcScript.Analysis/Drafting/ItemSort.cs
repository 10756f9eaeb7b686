namespace ProcScript.Analysis.Drafting;

/// <summary>What sort of thing a step takes an item for.</summary>
public enum ItemSort
{
    /// <summary>Something that comes off.</summary>
    Part,

    /// <summary>A joint of bolts, screws or nuts.</summary>
    Fastener,

    /// <summary>A joint that snaps.</summary>
    Clip,

    /// <summary>An electrical connector.</summary>
    Connector,

    /// <summary>A pipe or hose union.</summary>
    Line,

    /// <summary>A joint that is destroyed when it opens.</summary>
    Bond,

    /// <summary>An energy that can hurt.</summary>
    Energy,

    /// <summary>A fluid.</summary>
    Fluid,

    /// <summary>A control with positions.</summary>
    Control,
}
