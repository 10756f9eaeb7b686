using ProcScript.Analysis.Whole;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges a library as a whole: what of it is used, and what stands in it more than once.</summary>
public abstract class LibraryRule : Rule
{
    /// <summary>What it has to say of a library.</summary>
    internal abstract IEnumerable<Finding> Check(LibraryView view);
}
