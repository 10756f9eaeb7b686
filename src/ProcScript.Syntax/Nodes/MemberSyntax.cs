using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>Something that stands in the body of a machine or a part.</summary>
/// <param name="Span">From the first to the last word.</param>
public abstract record MemberSyntax(TextSpan Span) : SyntaxNode(Span);
