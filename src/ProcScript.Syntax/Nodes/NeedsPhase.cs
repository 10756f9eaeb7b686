namespace ProcScript.Syntax.Nodes;

/// <summary>When a condition binds.</summary>
public enum NeedsPhase
{
    /// <summary>Taking off and putting back.</summary>
    Both,

    /// <summary>Taking off only.</summary>
    Strip,

    /// <summary>Putting back only.</summary>
    Refit,
}
