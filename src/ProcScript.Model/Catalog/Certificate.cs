using ProcScript.Syntax.Text;

namespace ProcScript.Model.Catalog;

/// <summary>What somebody must hold to do certain work: a certificate, a licence, a course of the shop's own.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Declared">Where its name stands.</param>
public sealed record Certificate(string Name, string Title, SourceSpan Declared);
