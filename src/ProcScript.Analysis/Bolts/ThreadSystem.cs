namespace ProcScript.Analysis.Bolts;

/// <summary>The systems of threads that bolts of stated strength come in.</summary>
public enum ThreadSystem
{
    /// <summary>ISO metric, as in <c>M8x1.25</c>.</summary>
    Metric,

    /// <summary>Unified inch, as in <c>3/8-16 UNC</c>.</summary>
    Unified,
}
