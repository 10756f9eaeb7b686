using ProcScript.Syntax;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Reports;

/// <summary>A <c>// proc: allow</c> comment and what came of it.</summary>
/// <param name="Path">The file, relative to the library root, with forward slashes.</param>
/// <param name="Comment">The comment.</param>
/// <param name="Rule">The rule that it names; null where there is none.</param>
/// <param name="State">What came of it.</param>
public sealed record ReportedSuppression(string Path, SuppressionComment Comment, RuleInfo? Rule, SuppressionState State);

/// <summary>What came of a <c>// proc: allow</c> comment.</summary>
public enum SuppressionState
{
    /// <summary>It silences a finding.</summary>
    Used,

    /// <summary>There is nothing that it could silence.</summary>
    Unused,

    /// <summary>There is something to silence, and its last day is over.</summary>
    Expired,

    /// <summary>It names no rule.</summary>
    UnknownRule,

    /// <summary>Its rule is off, so that nobody knows whether there is something to silence.</summary>
    RuleOff,

    /// <summary>Its rule judges a library as a whole, and a part was checked.</summary>
    NotAsked,

    /// <summary>Not all that it may speak of was judged: a text has an error, a procedure is not proven, or a part of the library was read.</summary>
    NotJudged,
}
