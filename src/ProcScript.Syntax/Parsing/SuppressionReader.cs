using System.Globalization;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>Reads <c>// proc: allow CODE until DATE because "reason"</c>.</summary>
internal ref struct SuppressionReader
{
    private const string DateFormat = "yyyy-MM-dd";

    private readonly string _content;
    private readonly int _end;
    private int _at;

    private SuppressionReader(string content, TextSpan comment)
    {
        _content = content;
        _end = comment.Start + content.AsSpan(comment.Start, comment.Length).TrimEnd().Length;
        _at = comment.Start + "//".Length;
    }

    /// <summary>Reads a comment; null where it is any other. The line it speaks of is left for the caller to find.</summary>
    public static SuppressionComment? Read(string content, TextSpan comment) => new SuppressionReader(content, comment).Read(comment.Start);

    private SuppressionComment? Read(int start)
    {
        if (!Skip("proc:") || !SkipWord("allow"))
        {
            return null;
        }

        var rule = Word();
        if (_content.AsSpan(rule.Start, rule.Length) is "because" or "until")
        {
            _at = rule.Start;
            rule = new TextSpan(_at, 0);
        }

        var expiry = Expiry();
        var reason = SkipWord("because") ? Reason() : null;
        return new SuppressionComment(TextSpan.FromBounds(start, _end), rule, _content.Substring(rule.Start, rule.Length), reason, TargetLine: -1)
        {
            Expiry = expiry ?? Expiry(),
        };
    }

    private void SkipBlanks()
    {
        while (_at < _end && char.IsWhiteSpace(_content[_at]))
        {
            _at++;
        }
    }

    private bool Skip(string word)
    {
        SkipBlanks();
        if (!_content.AsSpan(_at, _end - _at).StartsWith(word, StringComparison.Ordinal))
        {
            return false;
        }

        _at += word.Length;
        return true;
    }

    /// <summary>Skips a word that ends there; a quote may follow at once.</summary>
    private bool SkipWord(string word)
    {
        var before = _at;
        if (Skip(word) && (_at == _end || char.IsWhiteSpace(_content[_at]) || _content[_at] == '"'))
        {
            return true;
        }

        _at = before;
        return false;
    }

    private TextSpan Word()
    {
        SkipBlanks();
        var start = _at;
        while (_at < _end && !char.IsWhiteSpace(_content[_at]))
        {
            _at++;
        }

        return TextSpan.FromBounds(start, _at);
    }

    private SuppressionExpiry? Expiry()
    {
        SkipBlanks();
        var start = _at;
        if (!SkipWord("until"))
        {
            return null;
        }

        var keyword = TextSpan.FromBounds(start, _at);
        var word = Word();
        if (word.Length == 0 || _content.AsSpan(word.Start, word.Length) is "because")
        {
            _at = word.Start;
            return new SuppressionExpiry(keyword, Day: null);
        }

        var isDate = DateOnly.TryParseExact(
            _content.AsSpan(word.Start, word.Length), DateFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day);
        return isDate ? new SuppressionExpiry(word, day) : new SuppressionExpiry(UpToReason(word), Day: null);
    }

    /// <summary>What is no date is so up to the reason.</summary>
    private TextSpan UpToReason(TextSpan first)
    {
        var last = first;
        while (_at < _end && !SkipWord("because"))
        {
            last = Word();
        }

        _at = last.End;
        return first.Cover(last);
    }

    /// <summary>A reason without quotes is a reason all the same; an empty one is none. After one in quotes a date may follow.</summary>
    private string? Reason()
    {
        SkipBlanks();
        var rest = _content.AsSpan(_at, _end - _at);
        var close = rest.LastIndexOf('"');
        var end = rest is ['"', ..] && close > 0 && rest[(close + 1)..].TrimStart().StartsWith("until", StringComparison.Ordinal) ? _at + close + 1 : _end;
        var reason = _content.AsSpan(_at, end - _at).Trim().Trim('"').Trim();
        _at = end;
        return reason.Length == 0 ? null : reason.ToString();
    }
}
