using ProcScript.Model.Machines;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Whole;

/// <summary>A machine with all the procedures on it.</summary>
/// <param name="Declared">Where the machine is declared.</param>
/// <param name="Variants">The machine in its variants.</param>
/// <param name="Traces">What its procedures leave behind, in their order.</param>
internal sealed record MachineFamily(SourceSpan Declared, IReadOnlyList<Machine> Variants, IReadOnlyList<ProcedureTraces> Traces);
