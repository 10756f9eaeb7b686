using ProcScript.Analysis.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that judges a machine, once per variant.</summary>
public abstract class MachineRule : Rule
{
    /// <summary>What it has to say of a machine.</summary>
    internal abstract IEnumerable<Finding> Check(MachineFacts facts);
}
