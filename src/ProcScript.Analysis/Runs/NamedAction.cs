using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs;

/// <summary>An action by its verb and its target.</summary>
/// <param name="Verb">The verb.</param>
/// <param name="Target">The target; null for a measurement, a task or a check.</param>
public readonly record struct NamedAction(Verb Verb, MachineItem? Target);
