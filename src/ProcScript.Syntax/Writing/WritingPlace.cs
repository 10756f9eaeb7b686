using System.Collections.Immutable;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Writing;

/// <summary>
/// Where somebody writes, and what the grammar takes there. It is read off the tables of the grammar, so a new sentence is known here as
/// soon as the grammar has it.
/// </summary>
public sealed class WritingPlace
{
    private readonly string _content;
    private readonly GrammarWalk _walk;
    private readonly List<TextSpan> _tokens;
    private readonly Dictionary<int, ImmutableArray<string>> _words = [];
    private int _end;

    private WritingPlace(string content, GrammarWalk walk, List<TextSpan> tokens) => (_content, _walk, _tokens) = (content, walk, tokens);

    /// <summary>Whether a text is being written.</summary>
    public bool IsInText { get; private init; }

    /// <summary>The comment that is being written, up to the place; null outside of one.</summary>
    public string? Comment { get; private init; }

    /// <summary>What may come, in the order of the grammar.</summary>
    public ImmutableArray<NextWord> Next { get; private set; } = [];

    /// <summary>The last word before the place, as the grammar reads it; empty at the start.</summary>
    public string Last => _tokens is [.., var last] ? Text(last) : "";

    /// <summary>The first words of the sentences of the innermost block up to the place, in order; the last may be the one that is being written.</summary>
    public ImmutableArray<string> Begun { get; private set; } = [];

    /// <summary>The words of the sentence that is being written; none where it is at its end, or none is.</summary>
    public ImmutableArray<string> Sentence { get; private set; } = [];

    /// <summary>What may still come in it, in the order of the grammar: what may be left out in brackets.</summary>
    public ImmutableArray<string> Rest { get; private set; } = [];

    /// <summary>Whether a line ends between the last word and the place.</summary>
    public bool IsOnNewLine { get; private set; }

    /// <summary>Whether what begins at a place stands right behind an <c>aside</c>, with or without its text; it belongs to that then.</summary>
    /// <param name="start">Where it begins.</param>
    public bool FollowsAside(int start)
    {
        var at = _tokens.FindIndex(token => token.Start >= start) is >= 0 and var found ? found : _tokens.Count;
        return at > 0 && (Text(_tokens[at - 1]) == "aside" || (at > 1 && Text(_tokens[at - 2]) == "aside"));
    }

    /// <summary>Reads the place of an offset.</summary>
    /// <param name="content">The text.</param>
    /// <param name="from">Where the declaration begins that holds the place, or any before it.</param>
    /// <param name="offset">The place. A word that ends there is still being written.</param>
    public static WritingPlace At(string content, int from, int offset)
    {
        ArgumentNullException.ThrowIfNull(content);
        return At(new WritingPlace(content, new GrammarWalk(), []), from, offset);
    }

    /// <summary>The place behind some words that would be written here. A word that stands here already is being replaced by them.</summary>
    /// <param name="words">The words. The last one is at its end.</param>
    public WritingPlace Behind(string words)
    {
        var content = string.Concat(_content.AsSpan(0, _end), words, " ");
        return At(new WritingPlace(content, _walk.Fork(), [.. _tokens]) { IsOnNewLine = IsOnNewLine }, _end, content.Length);
    }

    private static WritingPlace At(WritingPlace place, int from, int offset)
    {
        var (content, walk) = (place._content, place._walk);
        var reader = new TokenReader(content);
        reader.MoveTo(from);
        place._end = offset;
        for (var start = from; start < offset && start < content.Length; start = reader.Position)
        {
            var kind = reader.Read();
            var isTyped = reader.Position >= offset;
            switch (kind)
            {
                case COMMENT when isTyped:
                    return new WritingPlace(content, walk, []) { Comment = content[start..offset] };
                case STRING or UNCLOSED_STRING when reader.Position > offset || (isTyped && kind == UNCLOSED_STRING):
                    return new WritingPlace(content, walk, []) { IsInText = true };
                case COMMENT or WHITE_SPACE or UNKNOWN or Antlr4.Runtime.TokenConstants.InvalidType:
                    break;
                case NEWLINE:
                    place.IsOnNewLine = true;
                    break;
                case var _ when isTyped && IsWord(kind) && !IsFigure(kind, walk, place._tokens.Count):
                    place._end = start;
                    break;
                default:
                    walk.Take(kind, place._tokens.Count);
                    place._tokens.Add(TextSpan.FromBounds(start, reader.Position));
                    place.IsOnNewLine = false;
                    break;
            }
        }

        if (walk.Rest() is var (began, rest))
        {
            (place.Sentence, place.Rest) = ([.. place._tokens.Skip(began).Select(place.Text)], rest);
        }

        place.Begun = [.. walk.Begun.Select(token => place.Text(place._tokens[token]))];
        place.Next = [.. walk.Expected(place._tokens.Count).Select(place.Read).OfType<NextWord>().DistinctBy(next => (next.Sort, next.Word, next.Begins, Key(next)))];
        return place;
    }

    /// <summary>What an expectation is to somebody who writes; null for what another one stands for.</summary>
    private NextWord? Read(Expectation expected)
    {
        var literal = TokenNames.Literal(expected.Kind) ?? "";
        NextWordSort? sort = (expected.Rules[0].Rule, expected.Kind) switch
        {
            (_, UNCLOSED_STRING or Antlr4.Runtime.TokenConstants.EOF) or (RULE_position, _) => null,
            (RULE_name, _) => NextWordSort.Name,
            (RULE_unit, PERCENT or DEGREE) or (RULE_unitName, NAME) => NextWordSort.Unit,
            (RULE_unit or RULE_unitName, _) or (RULE_number, MINUS or SLASH) => null,
            (_, STRING) => NextWordSort.Text,
            (_, NAME or INTEGER or DECIMAL or SCREW_SIZE) => NextWordSort.Number,
            (_, var kind) => IsWord(kind) ? NextWordSort.Keyword : NextWordSort.Sign,
        };
        return sort is { } known
            ? new NextWord(
                known,
                known is NextWordSort.Keyword ? Phrase(literal, expected.Kind) : known is NextWordSort.Sign ? literal : "",
                expected.Begins,
                [.. expected.Rules.Select(one => new WritingFrame(ruleNames[one.Rule], StartOf(one.Began), one.Began < _tokens.Count, WordsFrom(one.Began)))])
            : null;
    }

    /// <summary>A word with those that have to follow it.</summary>
    private string Phrase(string literal, int kind) =>
        string.Join(' ', _walk.Following(kind, _tokens.Count, IsKeyword).Select(TokenNames.Literal).Prepend(literal));

    private static string Key(NextWord next) => string.Join('/', next.Frames.Take(3).Select(frame => frame.Rule));

    private int StartOf(int token) => token < _tokens.Count ? _tokens[token].Start : _content.Length;

    private ImmutableArray<string> WordsFrom(int token)
    {
        if (!_words.TryGetValue(token, out var words))
        {
            // What stands in its block are other sentences.
            _words[token] = words = [.. _tokens.Skip(token).Select(Text).TakeWhile(word => word != "{")];
        }

        return words;
    }

    private string Text(TextSpan token) => _content.Substring(token.Start, token.Length);

    /// <summary>Whether a number has a unit behind it, with no blank between them.</summary>
    private static bool IsFigure(int kind, GrammarWalk walk, int index) =>
        kind is INTEGER or DECIMAL && walk.Expected(index).Any(expected => expected.Kind == kind && expected.Rules[0].Rule == RULE_number);

    private static bool IsWord(int kind) => kind is NAME or INTEGER or DECIMAL or SCREW_SIZE || IsKeyword(kind);

    private static bool IsKeyword(int kind) => TokenNames.Literal(kind) is { } literal && char.IsAsciiLetter(literal[0]);
}
