using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>Something a machine may have or not.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Declared">Where its name stands.</param>
public sealed record Option(string Name, string Title, SourceSpan Declared);
