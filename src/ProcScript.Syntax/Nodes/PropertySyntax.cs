using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A keyword with its value. The grammar takes any property in any block; the model says which belong.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property, such as <c>mass</c>.</param>
public abstract record PropertySyntax(TextSpan Span, WordSyntax Keyword) : MemberSyntax(Span);
