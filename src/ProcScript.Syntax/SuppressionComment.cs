using ProcScript.Syntax.Text;

namespace ProcScript.Syntax;

/// <summary>
/// <c>// proc: allow PRC5003 until 2027-03-01 because "…"</c>: silences one rule on the next line that holds anything but comments.
/// </summary>
/// <param name="Span">The comment.</param>
/// <param name="RuleSpan">The code or the name of the rule.</param>
/// <param name="Rule">The code or the name of the rule as written; empty where it is missing.</param>
/// <param name="Reason">The reason; null where it is missing.</param>
/// <param name="TargetLine">The line it speaks of, counted from 0.</param>
public sealed record SuppressionComment(TextSpan Span, TextSpan RuleSpan, string Rule, string? Reason, int TargetLine)
{
    /// <summary>How long it holds; null where it says nothing of it.</summary>
    public SuppressionExpiry? Expiry { get; init; }
}

/// <summary>What stands after <c>until</c>.</summary>
/// <param name="Span">The word; <c>until</c> itself where none follows.</param>
/// <param name="Day">The last day on which the comment holds; null where the word is no date.</param>
public sealed record SuppressionExpiry(TextSpan Span, DateOnly? Day);
