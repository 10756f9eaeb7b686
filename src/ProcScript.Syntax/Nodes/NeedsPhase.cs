namespace ProcScript.Syntax.Nodes;

/// <summary>Which way a condition binds or an alert stands.</summary>
public enum NeedsPhase
{
    /// <summary>Taking off and putting back.</summary>
    Both,

    /// <summary>Taking off only.</summary>
    Strip,

    /// <summary>Putting back only.</summary>
    Refit,
}
