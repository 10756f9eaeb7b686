using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>Reads <c>// proc: allow CODE because "reason"</c>.</summary>
internal static class SuppressionReader
{
    /// <summary>Reads a comment; null where it is any other. The line it speaks of is left for the caller to find.</summary>
    public static SuppressionComment? Read(string content, TextSpan comment)
    {
        var end = comment.Start + content.AsSpan(comment.Start, comment.Length).TrimEnd().Length;
        var at = comment.Start + "//".Length;
        if (!Skip("proc:") || !Skip("allow") || (at < end && !char.IsWhiteSpace(content[at])))
        {
            return null;
        }

        SkipBlanks();
        var rule = Word();
        if (rule.Length > 0 && content.AsSpan(rule.Start, rule.Length) is "because")
        {
            at = rule.Start;
            rule = new TextSpan(at, 0);
        }

        var reason = Skip("because") ? Reason() : null;
        return new SuppressionComment(
            TextSpan.FromBounds(comment.Start, end), rule, content.Substring(rule.Start, rule.Length), reason, TargetLine: -1);

        void SkipBlanks()
        {
            while (at < end && char.IsWhiteSpace(content[at]))
            {
                at++;
            }
        }

        bool Skip(string word)
        {
            SkipBlanks();
            if (!content.AsSpan(at, end - at).StartsWith(word, StringComparison.Ordinal))
            {
                return false;
            }

            at += word.Length;
            return true;
        }

        TextSpan Word()
        {
            var start = at;
            while (at < end && !char.IsWhiteSpace(content[at]))
            {
                at++;
            }

            return TextSpan.FromBounds(start, at);
        }

        // A reason without quotes is a reason all the same; an empty one is none.
        string? Reason()
        {
            var reason = content.AsSpan(at, end - at).Trim().Trim('"').Trim();
            return reason.Length == 0 ? null : reason.ToString();
        }
    }
}
