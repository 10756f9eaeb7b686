namespace ProcScript.Syntax.Nodes;

/// <summary>How a reading compares with its limit.</summary>
public enum LimitRelation
{
    /// <summary>Within the quantity's range or tolerance.</summary>
    Within,

    /// <summary>At most.</summary>
    AtMost,

    /// <summary>At least.</summary>
    AtLeast,

    /// <summary>Less than.</summary>
    Less,

    /// <summary>More than.</summary>
    More,
}
