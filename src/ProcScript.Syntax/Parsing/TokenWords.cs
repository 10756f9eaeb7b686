using System.Globalization;
using System.Text;
using Antlr4.Runtime;
using Antlr4.Runtime.Tree;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Makes the nodes that stand for a word, a text or a number, and finds the place of any other.</summary>
internal sealed class TokenWords(SourceText text, FindingLog log)
{
    /// <summary>The most that a count may say.</summary>
    public const int LargestCount = 1_000_000;

    /// <summary>The largest whole number that a quantity holds exactly.</summary>
    private const double LargestNumber = 999_999_999_999_999;

    private readonly Dictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> _words =
        new Dictionary<string, string>(StringComparer.Ordinal).GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>From the first to the last word of a context; empty, behind the word before it, where it holds none.</summary>
    public static TextSpan SpanOf(ParserRuleContext context)
    {
        if (context.Stop is not { } stop)
        {
            return new TextSpan(context.Start.StartIndex, 0);
        }

        if (context.Start.TokenIndex < stop.TokenIndex)
        {
            return SpanOf(context.Start, stop);
        }

        // A token that is put in has the index of the one before it.
        var (start, end) = (context.Start.StartIndex, stop.StopIndex + 1);
        return context.Start.TokenIndex == stop.TokenIndex && start < end ? TextSpan.FromBounds(start, end) : new TextSpan(end, 0);
    }

    // Of two tokens that have changed places, the one that is read first stands behind the other.
    private static TextSpan SpanOf(IToken first, IToken last)
    {
        var span = SpanOf(first).Cover(SpanOf(last));
        if (first is ParserToken { Partner: { } other } && other.Start < first.StartIndex)
        {
            span = span.Cover(other.Span);
        }

        return last is ParserToken { Partner: { } partner } && partner.Start > last.StartIndex ? span.Cover(partner.Span) : span;
    }

    /// <summary>Where a token stands.</summary>
    public static TextSpan SpanOf(IToken token) => TextSpan.FromBounds(token.StartIndex, token.StopIndex + 1);

    /// <summary>The characters of a token; one string a word, however often it is written.</summary>
    public string TextOf(IToken token) => TextOf(SpanOf(token));

    /// <summary>The word that a context consists of.</summary>
    public WordSyntax Word(ParserRuleContext? context, ParserRuleContext parent)
    {
        if (context is null)
        {
            return Missing(parent);
        }

        var span = SpanOf(context);
        return context.Start == context.Stop ? Word(context.Start) : new WordSyntax(span, OneLine(span));
    }

    /// <summary>The word that a token is: of a misspelt one, which is a finding, what it is taken for.</summary>
    public WordSyntax Word(IToken token) => new(SpanOf(token), Spelt(token));

    /// <summary>The word that a context begins with; missing where it holds none, for then it is the next one's that it began at.</summary>
    public WordSyntax FirstWord(ParserRuleContext context) =>
        context.Stop is { } stop && context.Start.TokenIndex <= stop.TokenIndex ? Word(context.Start) : Missing(context);

    /// <summary>A word that is written as two, with one blank between them.</summary>
    public WordSyntax Words(ITerminalNode? first, ITerminalNode? last, ParserRuleContext parent) => (first, last) switch
    {
        (null, _) => Missing(parent),
        (_, null) => Word(first.Symbol),
        _ when first == last => Word(first.Symbol),
        _ => new WordSyntax(
            SpanOf(first.Symbol, last.Symbol),
            $"{Spelt(first.Symbol)} {Spelt(last.Symbol)}"),
    };

    private string Spelt(IToken token) => TokenNames.Literal(token.Type) is { } literal && char.IsAsciiLetter(literal[0]) ? literal : token.Type == NAME ? NameOf(token) : OneLine(SpanOf(token));

    // What took in several lines by mistake is quoted in messages: without the room that a layout leaves at their ends.
    private string OneLine(TextSpan span) => TextOf(span) is var word && word.AsSpan().ContainsAny('\n', '\r') ? text.Quote(span) : word;

    // No text runs over the end of its line: what it took in by mistake is not meant.
    private static ReadOnlySpan<char> FirstLine(ReadOnlySpan<char> written) =>
        written.IndexOfAny('\n', '\r') is var end and >= 0 ? written[..end].TrimEnd() : written;

    // One of several words, which is a finding, is what it would be as one.
    private string NameOf(IToken token) =>
        TextOf(token) is var name && name.AsSpan().ContainsAny(' ', '-', '\t') ? RepairSearch.NameOf(name) : name;

    /// <summary>A quoted text, or null where none is written.</summary>
    public TextSyntax? OptionalText(TextContext? context)
    {
        if (context is null)
        {
            return null;
        }

        var span = SpanOf(context);
        return new TextSyntax(span, Meaning(FirstLine(text.Content.AsSpan(span.Start, span.Length))));
    }

    /// <summary>A quoted text; empty where it is missing.</summary>
    public TextSyntax Text(TextContext? context, ParserRuleContext parent) =>
        OptionalText(context) ?? new TextSyntax(Missing(parent).Span, "");

    /// <summary>A whole number of things.</summary>
    public CountSyntax Count(CountContext? context, ParserRuleContext parent)
    {
        if (context is null)
        {
            return new CountSyntax(Missing(parent).Span, 0);
        }

        var span = SpanOf(context);
        return new CountSyntax(span, Whole(span));
    }

    /// <summary>The value of a whole number; 0 where it is missing or too large.</summary>
    public int Whole(TextSpan span)
    {
        if (span.Length == 0)
        {
            return 0;
        }

        var digits = text.Content.AsSpan(span.Start, span.Length);
        if (digits.ContainsAnyExceptInRange('0', '9'))
        {
            // Something else stands there, which is a finding already.
            return 0;
        }

        if (int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value <= LargestCount)
        {
            return value;
        }

        if (log.TakesAnother())
        {
            log.Add(NumberTooLarge.Count(new SourceSpan(text.Path, span), LargestCount));
        }

        return 0;
    }

    /// <summary>The value of a run of digits with or without a decimal point; 0 where it is missing or too large.</summary>
    public double Number(IToken token)
    {
        var span = SpanOf(token);
        if (span.Length == 0)
        {
            return 0;
        }

        var digits = text.Content.AsSpan(span.Start, span.Length);
        if (digits.Contains(','))
        {
            // Which number is meant, its finding asks; one of them keeps what is read with it from looking odd.
            digits = digits.Count(',') > 1 || digits.Contains('.') ? digits.ToString().Replace(",", "", StringComparison.Ordinal) : digits.ToString().Replace(" ", "", StringComparison.Ordinal).Replace(',', '.');
        }

        if (double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value <= LargestNumber)
        {
            return value;
        }

        if (log.TakesAnother())
        {
            log.Add(NumberTooLarge.Quantity(new SourceSpan(text.Path, span)));
        }

        return 0;
    }

    /// <summary>A range that holds more values than a range may.</summary>
    public void ReportLongRange(TextSpan span, int most)
    {
        if (log.TakesAnother())
        {
            log.Add(NumberTooLarge.Values(new SourceSpan(text.Path, span), most));
        }
    }

    /// <summary>A word that is not there: the place right behind its parent.</summary>
    public static WordSyntax Missing(ParserRuleContext parent) => new(new TextSpan(SpanOf(parent).End, 0), "");

    /// <summary>The characters of a span.</summary>
    public string TextOf(TextSpan span)
    {
        if (span.Length == 0)
        {
            return "";
        }

        var characters = text.Content.AsSpan(span.Start, span.Length);
        if (!_words.TryGetValue(characters, out var word))
        {
            word = characters.ToString();
            _words.TryAdd(characters, word);
        }

        return word;
    }

    private static string Meaning(ReadOnlySpan<char> written)
    {
        // Where the opening quote is missing, which is a finding, the text begins at once.
        var inner = written.Length > 0 && IsQuote(written[0], written[0]) ? written[1..] : written;
        if (inner.Length > 0 && IsQuote(inner[^1], written[0]) && !EndsInEscape(inner[..^1]))
        {
            inner = inner[..^1];
        }

        return inner.Contains('\\') ? Unescaped(inner) : inner.ToString();
    }

    private static bool IsQuote(char closing, char opening) =>
        closing == '"' || (CharacterStream.IsTypographicQuote(closing) && CharacterStream.IsTypographicQuote(opening));

    private static bool EndsInEscape(ReadOnlySpan<char> inner)
    {
        var backslashes = 0;
        while (backslashes < inner.Length && inner[inner.Length - 1 - backslashes] == '\\')
        {
            backslashes++;
        }

        return backslashes % 2 == 1;
    }

    // A backslash before any other character stands for itself, as in a part number or a path.
    private static string Unescaped(ReadOnlySpan<char> inner)
    {
        var meaning = new StringBuilder(inner.Length);
        for (var i = 0; i < inner.Length; i++)
        {
            var next = i + 1 < inner.Length ? inner[i + 1] : '\0';
            if (inner[i] == '\\' && next is '"' or '\\' or 'n')
            {
                meaning.Append(next == 'n' ? '\n' : next);
                i++;
            }
            else
            {
                meaning.Append(inner[i]);
            }
        }

        return meaning.ToString();
    }
}
