using ProcScript.Syntax.Text;

namespace ProcScript.Model.Names;

/// <summary>A word of a file that names something.</summary>
/// <param name="Span">Where it stands.</param>
/// <param name="Name">The name, without an index.</param>
/// <param name="Scope">Among which names it counts.</param>
/// <param name="Owner">Of an item the name of its machine, of a variable the place of its declaration; else empty.</param>
/// <param name="IsDeclaration">Whether it declares what it names.</param>
public readonly record struct NameUse(TextSpan Span, string Name, NameScope Scope, string Owner, bool IsDeclaration);

/// <summary>Names that may not clash with each other.</summary>
public enum NameScope
{
    /// <summary>Tools, supplies, kinds, machines, procedures: known wherever the file is used.</summary>
    Library,

    /// <summary>Parts, joints, covers, energies, fluids, controls and options of one machine.</summary>
    Machine,

    /// <summary>Parameters and the variables of <c>each</c>: known in their block.</summary>
    Block,
}
