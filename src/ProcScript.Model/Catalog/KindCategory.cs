namespace ProcScript.Model.Catalog;

/// <summary>The sorts of joint kinds; each has its own verbs.</summary>
public enum KindCategory
{
    /// <summary>Turned out and in: bolts, screws, nuts.</summary>
    Fastener,

    /// <summary>Snapped, pushed or turned a little.</summary>
    Clip,

    /// <summary>An electrical connector.</summary>
    Connector,

    /// <summary>A line for a fluid.</summary>
    Line,

    /// <summary>Destroyed when opened: adhesive, tie, seal.</summary>
    Bond,

    /// <summary>The kind's name did not resolve; a finding says so and nothing more is asked of it.</summary>
    Unknown,
}
