namespace ProcScript.Syntax.Findings;

/// <summary>How much a finding weighs. The driver sets it; a rule only has a default.</summary>
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Hint,

    /// <summary>Likely wrong.</summary>
    Warning,

    /// <summary>The procedure must not be worked from.</summary>
    Error,
}
