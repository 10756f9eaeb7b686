using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>A place at a machine in which only so many people work at once. Nothing is done to it; items and actions stand in it.</summary>
/// <param name="Name">The name with its index: unique in its machine, among the items too.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Declared">Where its name is declared.</param>
/// <param name="Room">How many people work in it at once, at least one.</param>
public sealed record Workplace(string Name, string Title, SourceSpan Declared, int Room)
{
    /// <summary>What <c>in none</c> says: nobody has to be in a place for it.</summary>
    public static Workplace None { get; } = new("none", "", default, int.MaxValue);
}
