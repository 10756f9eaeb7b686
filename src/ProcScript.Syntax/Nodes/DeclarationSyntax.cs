using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>Something a file declares for others to use: a catalog entry, a machine, a procedure.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it, where written.</param>
public abstract record DeclarationSyntax(TextSpan Span, WordSyntax Name, TextSyntax? Title) : SyntaxNode(Span);
