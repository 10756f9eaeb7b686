using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Whole;

/// <summary>A machine with all the procedures on it.</summary>
/// <param name="Declared">Where the machine is declared.</param>
/// <param name="Variants">The machine in its variants.</param>
/// <param name="Traces">What its procedures leave behind, in their order.</param>
internal sealed record MachineFamily(SourceSpan Declared, ImmutableArray<Machine> Variants, ImmutableArray<ProcedureTraces> Traces)
{
    /// <summary>Whether another has the same objects.</summary>
    public bool IsSame(MachineFamily other) => Declared == other.Declared
        && Variants.AsSpan().SequenceEqual(other.Variants.AsSpan(), ReferenceEqualityComparer.Instance)
        && Traces.AsSpan().SequenceEqual(other.Traces.AsSpan(), ReferenceEqualityComparer.Instance);

    /// <summary>It is itself alone.</summary>
    public bool Equals(MachineFamily? other) => ReferenceEquals(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => Declared.GetHashCode();
}
