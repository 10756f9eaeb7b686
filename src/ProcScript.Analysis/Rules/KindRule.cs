using ProcScript.Model.Catalog;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges a kind of the catalog, whether a machine has joints of it or not.</summary>
public abstract class KindRule : Rule
{
    /// <summary>What it has to say of a kind.</summary>
    /// <param name="kind">The kind.</param>
    public abstract IEnumerable<Finding> Check(Kind kind);
}
