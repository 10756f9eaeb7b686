namespace ProcScript.Syntax.Findings;

/// <summary>Whether the findings of a rule carry an edit that mends them.</summary>
public enum FixAvailability
{
    /// <summary>None does.</summary>
    Never,

    /// <summary>Some do.</summary>
    Sometimes,

    /// <summary>All do.</summary>
    Always,
}
