using ProcScript.Analysis.Bolts;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges how tight something is, wherever that is written: at a kind, at a joint or at an action.</summary>
public abstract class TorqueRule : Rule
{
    /// <summary>What it has to say of one such place.</summary>
    internal abstract IEnumerable<Finding> Check(Tightening tightening);
}
