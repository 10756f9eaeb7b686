using ProcScript.Analysis.Runs;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges a proven procedure.</summary>
public abstract class OutcomeRule : Rule
{
    /// <summary>What it has to say of a procedure whose strip and refit are proven.</summary>
    public abstract IEnumerable<Finding> Check(ProcedureOutcome outcome);
}
