using Antlr4.Runtime;
using Antlr4.Runtime.Misc;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// The tokens of a file as the generated parser reads them. A token object is made when the parser asks for one, so that
/// looking ahead and skipping cost nothing. A repair may put a token in, or take one for another, at the place that is read.
/// </summary>
internal sealed class ParserTokenStream : ITokenStream
{
    private const int CancellationInterval = 1 << 14;

    // What lies before the place that is read is never read again, so a token put in takes the slot before it; the first
    // slots are there for tokens that are missing at the very start.
    private readonly Lexeme[] _slots;
    private readonly CancellationToken _cancellation;
    private int _end;

    // The objects made last, with the index they are good for: a prediction reads on and comes back.
    private IToken? _current;
    private int _currentIndex = -1;
    private IToken? _previous;
    private int _previousIndex = -1;
    private IToken? _displaced;
    private int _displacedIndex = -1;

    // By its slot, what stands where each token of a pair that has changed places would stand.
    private readonly Dictionary<int, Lexeme> _partners = [];

    /// <summary>Takes the tokens of a file of <paramref name="length"/> characters, without the end of file.</summary>
    public ParserTokenStream(List<Lexeme> lexemes, int length, CancellationToken cancellation)
    {
        _slots = new Lexeme[lexemes.Count + First + 1];
        lexemes.CopyTo(_slots, First);
        _end = lexemes.Count + First;
        _slots[_end] = new Lexeme(TokenConstants.EOF, length, length);
        _cancellation = cancellation;
        Index = First;
    }

    /// <summary>The index of the first token.</summary>
    public const int First = 4;

    /// <inheritdoc/>
    public int Index { get; private set; }

    /// <inheritdoc/>
    public int Size => _slots.Length;

    /// <inheritdoc/>
    public string SourceName => IntStreamConstants.UnknownSourceName;

    /// <inheritdoc/>
    public ITokenSource? TokenSource => null;

    /// <summary>The token <paramref name="ahead"/> places behind the one that is read next; the end of file beyond the last.</summary>
    public ref readonly Lexeme Peek(int ahead) => ref _slots[Math.Min(Index + ahead, _end)];

    /// <summary>The kinds of the next tokens, no further than the end of the file.</summary>
    public int[] Kinds(int count)
    {
        var kinds = new int[Math.Min(count, _end - Index + 1)];
        for (var i = 0; i < kinds.Length; i++)
        {
            kinds[i] = _slots[Index + i].Kind;
        }

        return kinds;
    }

    /// <summary>Whether a token stands before the one that is read next.</summary>
    public bool HasPrevious => Index > First;

    /// <summary>The token before the one that is read next.</summary>
    public ref readonly Lexeme Previous => ref _slots[Index - 1];

    /// <summary>Puts a missing token in before the one that is read next.</summary>
    public void Insert(int kind, int place)
    {
        _displaced = LT(-1);
        Index--;
        _displacedIndex = Index;
        Replace(new Lexeme(kind, place, place));
    }

    /// <summary>Takes the token that is read next for one of another kind.</summary>
    public void ReplaceKind(int kind) => Replace(_slots[Index] with { Kind = kind });

    /// <summary>Takes the token that is read next for an empty one of another kind.</summary>
    public void ReplaceKind(int kind, int place) => Replace(new Lexeme(kind, place, place));

    /// <summary>Makes the next tokens a part of the one before them.</summary>
    public void ExtendPrevious(int count)
    {
        var (end, token) = (_slots[Index + count - 1].End, (ParserToken)LT(-1));
        token.Extend(end);
        for (var i = 0; i < count; i++)
        {
            Consume();
        }

        _slots[Index - 1] = new Lexeme(token.Type, token.StartIndex, end);
        (_previous, _previousIndex) = (token, Index);
    }

    /// <summary>Has the next two tokens change places.</summary>
    public void Swap()
    {
        (_slots[Index], _slots[Index + 1]) = (_slots[Index + 1], _slots[Index]);
        (_partners[Index], _partners[Index + 1]) = (_slots[Index + 1], _slots[Index]);
        _currentIndex = -1;
    }

    /// <summary>Ends the file here.</summary>
    public void Cut()
    {
        _end = Index;
        Replace(_slots[Index] with { Kind = TokenConstants.EOF, End = _slots[Index].Start });
    }

    /// <inheritdoc/>
    public int LA(int i) => i > 0 ? Peek(i - 1).Kind : _slots[Index + i].Kind;

    /// <inheritdoc/>
    public IToken LT(int k)
    {
        switch (k)
        {
            case 1 when _currentIndex == Index:
                return _current!;
            case 1:
                _current = Get(Index);
                _currentIndex = Index;
                return _current;
            case -1 when _displacedIndex == Index:
                return _displaced!;
            case -1 when _previousIndex == Index:
                return _previous!;
            default:
                return Get(k > 0 ? Math.Min(Index + k - 1, _end) : Index + k);
        }
    }

    /// <inheritdoc/>
    public void Consume()
    {
        if (Index % CancellationInterval == 0)
        {
            _cancellation.ThrowIfCancellationRequested();
        }

        var consumed = _currentIndex == Index ? _current : null;
        Index++;
        if (consumed is not null)
        {
            _previous = consumed;
            _previousIndex = Index;
        }
    }

    /// <inheritdoc/>
    public void Seek(int index) => Index = Math.Max(index, First);

    /// <inheritdoc/>
    public int Mark() => 0;

    /// <inheritdoc/>
    public void Release(int marker)
    {
    }

    /// <inheritdoc/>
    public IToken Get(int i) => new ParserToken(_slots[i], i) { Partner = _partners.Count > 0 && _partners.TryGetValue(i, out var partner) ? partner : null };

    /// <inheritdoc/>
    public string GetText(Interval interval) => "";

    /// <inheritdoc/>
    public string GetText() => "";

    /// <inheritdoc/>
    public string GetText(RuleContext ctx) => "";

    /// <inheritdoc/>
    public string GetText(IToken start, IToken stop) => "";

    private void Replace(Lexeme lexeme)
    {
        _slots[Index] = lexeme;
        _partners.Remove(Index);
        _currentIndex = -1;
    }
}
