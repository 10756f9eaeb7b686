using ProcScript.Analysis.Runs;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges the refit of a sound strip.</summary>
public abstract class RefitRunRule : Rule
{
    /// <summary>What it has to say of the refit.</summary>
    public abstract IEnumerable<Finding> Check(RefitAttempt attempt);
}
