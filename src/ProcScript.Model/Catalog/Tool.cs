using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Catalog;

/// <summary>A tool.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Declared">Where its name stands.</param>
public sealed record Tool(string Name, string Title, SourceSpan Declared)
{
    /// <summary>Its size, where written.</summary>
    public Quantity? Size { get; init; }

    /// <summary>Of a torque wrench: the torques that it is good for.</summary>
    public Quantity? Range { get; init; }
}
