namespace ProcScript.Syntax.Nodes;

/// <summary>What the second number of a quantity is.</summary>
public enum QuantityForm
{
    /// <summary>There is none.</summary>
    Plain,

    /// <summary>A tolerance to both sides.</summary>
    PlusMinus,

    /// <summary>The upper end of a range.</summary>
    Range,
}
