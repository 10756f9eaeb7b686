using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges the texts of a file as they are written, once a file.</summary>
public abstract class ProseRule : Rule
{
    /// <summary>What it has to say of a file.</summary>
    internal abstract IEnumerable<Finding> Check(FileProse file);
}
