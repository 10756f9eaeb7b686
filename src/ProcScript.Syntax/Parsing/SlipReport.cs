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
            case RepairAction.Respell when Speaks(next):
                log.Add(UnexpectedText.Misspelt(text, next, TokenNames.Literal(repair.Kind)!));
                break;
            case RepairAction.TakeAsName when Speaks(next):
                log.Add(ReservedWordAsName.At(text, next));
                break;
            case RepairAction.Delete when Speaks(next):
                log.Add(IsDecimalComma(0) ? UnexpectedText.DecimalComma(text, next) : UnexpectedText.Surplus(text, next));
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
        if (IsDecimalComma(ahead))
        {
            if (Speaks(found.Span))
            {
                log.Add(UnexpectedText.DecimalComma(text, found.Span));
            }
        }
        else if (found.Kind == TokenConstants.EOF)
        {
            var last = tokens.HasPrevious ? tokens.Previous.Span : found.Span;
            if (Speaks(last))
            {
                log.Add(UnexpectedText.EndOfFile(text, last, expectation));
            }
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
            log.Add(UnexpectedText.MissingHead(text, brace, [.. kinds.Select(kind => TokenNames.Describe([kind]))]));
        }
    }

    /// <summary>The rest of the file is not read.</summary>
    public void GiveUp()
    {
        _gaveUp = true;
        log.Add(UnexpectedText.GivenUp(text, tokens.Peek(0).Span));
    }

    private bool IsDecimalComma(int ahead) =>
        ahead == 0 && tokens.HasPrevious
        && tokens.Previous is { Kind: INTEGER } whole && tokens.Peek(0) is { Kind: COMMA } comma && tokens.Peek(1) is { Kind: INTEGER } part
        && whole.End == comma.Start && comma.End == part.Start;

    private void Missing(Repair repair, TextSpan next)
    {
        var what = TokenNames.DescribeChoice(repair.Choice);
        var word = repair.Choice.Length == 1 ? TokenNames.Literal(repair.Kind) : null;
        var isBehind = tokens.HasPrevious && text.LineAt(tokens.Previous.Start) < text.LineAt(next.Start)
            && !repair.BeginsSentence;
        var place = isBehind ? tokens.Previous.Span : next;
        if (Speaks(place))
        {
            log.Add(isBehind
                ? UnexpectedText.MissingBehind(text, place, what, word)
                : UnexpectedText.MissingBefore(text, place, what, word));
        }
    }

    private bool Speaks(TextSpan place)
    {
        var isEcho = tokens.Index - _last < Echo;
        _last = tokens.Index;
        return !_gaveUp && !isEcho && !log.HasFindingOnLineOf(place.Start) && log.TakesAnother();
    }
}
