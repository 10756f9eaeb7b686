using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Findings;

/// <summary>A place with a few words that make sense alone.</summary>
/// <param name="Place">The place.</param>
/// <param name="Label">What is to be seen there.</param>
public readonly record struct LabeledSpan(SourceSpan Place, string Label);
