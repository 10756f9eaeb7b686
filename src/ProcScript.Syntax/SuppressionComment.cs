using ProcScript.Syntax.Text;

namespace ProcScript.Syntax;

/// <summary><c>// proc: allow PRC5003 because "…"</c>: silences one finding on the next line that holds anything but comments.</summary>
/// <param name="Span">The comment.</param>
/// <param name="RuleSpan">The code or the name of the rule.</param>
/// <param name="Rule">The code or the name of the rule as written; empty where it is missing.</param>
/// <param name="Reason">The reason; null where it is missing.</param>
/// <param name="TargetLine">The line it speaks of, counted from 0.</param>
public sealed record SuppressionComment(TextSpan Span, TextSpan RuleSpan, string Rule, string? Reason, int TargetLine);
