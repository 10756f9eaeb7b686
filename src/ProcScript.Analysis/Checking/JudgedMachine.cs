using System.Collections.Immutable;
using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Rules;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>A machine without errors with what follows from it alone.</summary>
/// <param name="Facts">The facts.</param>
/// <param name="Findings">What the rules have to say of it.</param>
internal sealed record JudgedMachine(MachineFacts Facts, ImmutableArray<Finding> Findings)
{
    private static readonly ImmutableArray<MachineRule> Rules = [.. AnalysisRules.All.OfType<MachineRule>()];

    /// <summary>Works it out.</summary>
    public static JudgedMachine Of(Machine machine, CheckSettings settings)
    {
        var facts = new MachineFacts(machine) { Settings = settings.For(machine.Declared.Path) };
        return new JudgedMachine(facts, [.. Rules.SelectMany(rule => rule.Check(facts)), .. TorqueCheck.Judge(Tightening.Of(machine), settings)]);
    }
}
