using System.Collections.Immutable;
using ProcScript.Model.Figures;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>A machine in one variant: every <c>each</c> and <c>when</c> unrolled.</summary>
public sealed class Machine
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>Where its name is declared.</summary>
    public required SourceSpan Declared { get; init; }

    /// <summary>All options that the machine declares.</summary>
    public required ImmutableArray<Option> Options { get; init; }

    /// <summary>The options that this variant has, in the order of declaration.</summary>
    public required ImmutableArray<Option> With { get; init; }

    /// <summary>All parts, parents before children.</summary>
    public required ImmutableArray<Part> Parts { get; init; }

    /// <summary>All joints and covers.</summary>
    public required ImmutableArray<Joint> Joints { get; init; }

    /// <summary>All energies.</summary>
    public required ImmutableArray<Energy> Energies { get; init; }

    /// <summary>All fluids.</summary>
    public required ImmutableArray<Fluid> Fluids { get; init; }

    /// <summary>All controls.</summary>
    public required ImmutableArray<Control> Controls { get; init; }

    /// <summary>All places in which only so many people work at once, in the order of declaration.</summary>
    public ImmutableArray<Workplace> Places { get; init; } = [];

    /// <summary>Whether its text carries an error in this variant, so that looking further would only repeat it.</summary>
    public bool HasErrors { get; internal set; }

    /// <summary>The pictures of its parts, joints and covers.</summary>
    public ImmutableArray<Figure> Figures => field.IsDefault ? field = [.. Parts.Concat<MachineItem>(Joints).SelectMany(item => item.Figures)] : field;

    /// <summary>Every item by its name with index.</summary>
    public required IReadOnlyDictionary<string, MachineItem> Items { get; init; }
}
