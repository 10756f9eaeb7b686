using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges a kind of the catalog, whether a machine has joints of it or not.</summary>
public abstract class KindRule : Rule
{
    /// <summary>What it has to say of a kind.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="library">The library that has it.</param>
    public abstract IEnumerable<Finding> Check(Kind kind, Library library);
}
