using System.Collections.Immutable;
using Antlr4.Runtime;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Says what the parser stumbled over. A line gives one such finding at most, and so do a few words in a row: the second is
/// more often the first one's echo than another slip.
/// </summary>
internal sealed class SlipReport(SourceText text, ParserTokenStream tokens, FindingLog log)
{
    private const int Echo = 3;

    private readonly IReadOnlySet<int> _disturbed = log.Lines();
    private int _last = -Echo;
    private bool _gaveUp;

    /// <summary>Whether some word on the line of a position is not as it should be, so that its neighbours may not be either.</summary>
    public bool IsDisturbed(int position) => _disturbed.Contains(text.LineAt(position));

    /// <summary>A change that makes the text go on; the tokens are those before the change.</summary>
    public void Repaired(Repair repair)
    {
        var next = tokens.Peek(0).Span;
        switch (repair.Action)
        {
            case RepairAction.Insert:
                Missing(repair, next);
                break;
            case RepairAction.Respell when repair.Kind == COMMA && Speaks(next):
                log.Add(WordChanges.AndForComma(text, tokens.Previous.Span, next));
                break;
            case RepairAction.Respell when repair.Kind is LEFT_BRACKET or LEFT_PAREN && Speaks(next):
                log.Add(WordChanges.OtherBrackets(text, next, Closing(), repair.Kind == LEFT_BRACKET));
                break;
            case RepairAction.Respell when Speaks(next):
                log.Add(UnexpectedText.Misspelt(text, Stretch(repair.Length), tokens.Peek(0).Kind == NAME || repair.Length > 1, [.. repair.Choice.Select(kind => TokenNames.Literal(kind)!)]));
                break;
            case RepairAction.RepeatVerb when Speaks(next):
                log.Add(WordChanges.SeveralItems(text, tokens.Previous.Span, next, TokenNames.Literal(repair.Kind)!, Items()));
                break;
            case RepairAction.JoinName when Speaks(next):
                log.Add(WordChanges.NameOfWords(text, tokens.Previous.Span.Cover(tokens.Peek(repair.Length - 1).Span)));
                break;
            case RepairAction.Quote when Speaks(next):
                log.Add(WordChanges.TextWithoutQuotes(text, Stretch(repair.Length)));
                break;
            case RepairAction.Swap when Speaks(next):
                log.Add(WordChanges.Swapped(text, next, tokens.Peek(1).Span));
                break;
            case RepairAction.Delete when repair.Length > 1 && Speaks(next):
                log.Add(WordChanges.Numbered(text, TextSpan.FromBounds(next.Start, tokens.Peek(repair.Length).Start), Stretch(repair.Length)));
                break;
            case RepairAction.TakeAsName when Speaks(next):
                log.Add(ReservedWordAsName.At(text, next));
                break;
            case RepairAction.Delete when tokens.Peek(0).Kind == STRING && tokens.HasPrevious && tokens.LA(-2) == ON && Speaks(next):
                log.Add(WordChanges.TitleTooLate(text, SpanOf(tokens.LT(-2)), next));
                break;
            case RepairAction.Delete when Speaks(next):
                log.Add(UnexpectedText.Surplus(text, next));
                break;
        }
    }

    /// <summary>A token that cannot stand where it does.</summary>
    /// <param name="ahead">How many tokens lie before it.</param>
    /// <param name="expected">The kinds that may.</param>
    public void Unexpected(int ahead, IReadOnlyCollection<int> expected)
    {
        var found = tokens.Peek(ahead);
        var expectation = TokenNames.Describe(expected);
        if (found.Kind == TokenConstants.EOF)
        {
            var last = tokens.HasPrevious ? tokens.Previous.Span : found.Span;
            if (Speaks(last))
            {
                log.Add(UnexpectedText.EndOfFile(text, last, expectation));
            }
        }
        else if (expected.Contains(INTEGER) && NumberWords.Of(text.Slice(found.Span)) is { } number && Speaks(found.Span))
        {
            log.Add(WordChanges.NumberInWords(text, found.Span, number));
        }
        else if (Speaks(found.Span))
        {
            var previous = tokens.HasPrevious ? tokens.Previous.Kind : TokenConstants.InvalidType;
            log.Add(UnexpectedText.At(text, found.Span, expectation, SlipAdvice.For(found.Kind, previous, expected)));
        }
    }

    /// <summary>Words that are missing before the block that is read next.</summary>
    public void MissingHead(ImmutableArray<int> kinds)
    {
        var brace = tokens.Peek(0).Span;
        if (Speaks(brace))
        {
            var head = kinds is [ON, NAME] && NamesOfTitles.OnlyMachine(text) is { } machine ? $"on {machine}" : null;
            log.Add(UnexpectedText.MissingHead(text, brace, [.. kinds.Select(kind => TokenNames.Describe([kind]))], head));
        }
    }

    /// <summary>A joint without <c>as</c> and a name.</summary>
    /// <param name="part">The part that it stands in.</param>
    /// <param name="kind">Its kind, the last word that it has.</param>
    public void MissingJointName(ParserRuleContext? part, TextSpan kind)
    {
        if (!Speaks(kind))
        {
            return;
        }

        // "lamp[side]" and "plug" make "lamp_plug[side]".
        var reference = part is null ? "" : text.Slice(TokenWords.SpanOf(part));
        var index = reference.IndexOf('[', StringComparison.Ordinal);
        var name = index < 0 ? reference : reference[..index];
        log.Add(WordChanges.JointWithoutName(text, kind, $"{name}{(name.Length > 0 ? "_" : "")}{text.Slice(kind)}{(index < 0 ? "" : reference[index..])}"));
    }

    /// <summary>The rest of the file is not read.</summary>
    public void GiveUp()
    {
        _gaveUp = true;
        log.Add(UnexpectedText.GivenUp(text, tokens.Peek(0).Span));
    }

    private TextSpan Stretch(int length) => TextSpan.FromBounds(tokens.Peek(0).Start, tokens.Peek(length - 1).End);

    /// <summary>The bracket on the line that closes the one that is read next; null where none does.</summary>
    private TextSpan? Closing()
    {
        for (var at = 1; tokens.Peek(at) is { Kind: not (TokenConstants.EOF or LEFT_BRACE or RIGHT_BRACE) } token && text.LineAt(token.Start) == text.LineAt(tokens.Peek(0).Start); at++)
        {
            if (token.Kind is RIGHT_BRACKET or RIGHT_PAREN)
            {
                return token.Span;
            }
        }

        return null;
    }

    /// <summary>The items of a line that commas part, from the comma on that is read next: each by its sign and its first word.</summary>
    private List<(TextSpan Sign, TextSpan Item)> Items()
    {
        List<(TextSpan Sign, TextSpan Item)> items = [];
        for (var at = 0; tokens.Peek(at) is { Kind: COMMA or NAME } sign && tokens.Peek(at + 1) is { Kind: not TokenConstants.EOF } item; at++)
        {
            if (sign.Kind == COMMA || text.Slice(sign.Span) is "and" or "then")
            {
                items.Add((sign.Span, item.Span));
            }
        }

        return items;
    }

    private void Missing(Repair repair, TextSpan next)
    {
        var what = TokenNames.DescribeChoice(repair.Choice);
        var word = repair.Choice.Length == 1 ? TokenNames.Literal(repair.Kind) ?? Guess(repair.Kind)
            : tokens.HasPrevious && tokens.Previous.Kind is BEFORE or AFTER && tokens.Peek(0).Kind == NAME ? OrderVerbs.For(text.Content, text.Slice(next))
            : null;
        if (IsStateBeforeItem())
        {
            if (Speaks(next))
            {
                log.Add(WordChanges.Swapped(text, tokens.Previous.Span, next));
            }

            return;
        }

        var isBehind = tokens.HasPrevious && text.LineAt(tokens.Previous.Start) < text.LineAt(next.Start)
            && !repair.BeginsSentence;
        var place = isBehind ? tokens.Previous.Span : next;
        if (Speaks(place))
        {
            var isBare = isBehind && repair.Kind == NAME && IsAlone(place);
            log.Add(isBare ? WordChanges.BareVerb(text, place, what) : isBehind
                ? UnexpectedText.MissingBehind(text, place, what, word)
                : UnexpectedText.MissingBefore(text, place, what, word));
        }
    }

    /// <summary>"needs isolated mains" for "needs mains isolated".</summary>
    private bool IsStateBeforeItem() => tokens.HasPrevious && tokens.Peek(0).Kind == NAME && tokens.LA(-2) is NEEDS or COMMA or OR
        && TokenNames.FirstOf(RULE_needState).Contains(tokens.Previous.Kind) && text.LineAt(tokens.Previous.Start) == text.LineAt(tokens.Peek(0).Start);

    /// <summary>What may be written for a name or a text that is missing; null where nothing tells.</summary>
    private string? Guess(int kind) => (kind, tokens.Peek(0)) switch
    {
        (NAME, { Kind: STRING } title) when tokens.HasPrevious && tokens.Previous.Kind is not (AS or OF) => NamesOfTitles.For(text, title.Span),
        (STRING, { Kind: LEFT_BRACE }) when tokens.HasPrevious && tokens.Previous.Kind == STAGE => "\"Strip\"",
        _ => null,
    };

    /// <summary>Whether nothing else stands on the line of a word.</summary>
    private bool IsAlone(TextSpan word)
    {
        var line = text.LineSpan(text.LineAt(word.Start));
        return text.Content.AsSpan(line.Start, line.Length).Trim().Length == word.Length;
    }

    private static TextSpan SpanOf(IToken token) => TextSpan.FromBounds(token.StartIndex, token.StopIndex + 1);

    private bool Speaks(TextSpan place)
    {
        var isEcho = tokens.Index - _last < Echo;
        _last = tokens.Index;
        return !_gaveUp && !isEcho && !log.HasFindingOnLineOf(place.Start) && log.TakesAnother();
    }
}
