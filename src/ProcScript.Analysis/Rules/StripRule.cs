using ProcScript.Analysis.Runs;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges a strip as it was performed.</summary>
public abstract class StripRule : Rule
{
    /// <summary>What it has to say of the run.</summary>
    public abstract IEnumerable<Finding> Check(StripRun run);
}
