namespace ProcScript.Model.Quantities;

/// <summary>The order in which the fasteners of one joint are tightened.</summary>
public enum TighteningPattern
{
    /// <summary>Each one across from the one before.</summary>
    Star,

    /// <summary>From the middle to the edge.</summary>
    InsideOut,

    /// <summary>In the order in which the words or marks at the joint list them.</summary>
    Listed,

    /// <summary>Any: it is said that the order does not matter.</summary>
    None,
}
