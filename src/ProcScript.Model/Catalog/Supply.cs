using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Catalog;

/// <summary>Something consumed: a seal, grease, cable ties by the bag.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Declared">Where its name stands.</param>
public sealed record Supply(string Name, string Title, SourceSpan Declared)
{
    /// <summary>Whether it never serves twice.</summary>
    public bool SingleUse { get; init; }

    /// <summary>How long it cures before what it holds may be loaded.</summary>
    public Quantity? Cure { get; init; }
}
