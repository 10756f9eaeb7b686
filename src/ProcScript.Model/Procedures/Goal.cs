using ProcScript.Model.Machines;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>What a procedure is for: a strip or work verb with its target.</summary>
/// <param name="Verb">What is to be done.</param>
/// <param name="Target">With what.</param>
/// <param name="Source">Where it is written.</param>
public sealed record Goal(Verb Verb, MachineItem Target, SourceSpan Source);
