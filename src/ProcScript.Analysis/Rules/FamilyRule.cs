using ProcScript.Analysis.Necessity;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges a procedure of the text as a whole: all its variants at once, with whatever calls it.</summary>
public abstract class FamilyRule : Rule
{
    /// <summary>What it has to say of a procedure.</summary>
    internal abstract IEnumerable<Finding> Check(ProcedureFamily family);
}
