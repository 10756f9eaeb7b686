using System.Collections.Immutable;
using System.Globalization;
using Antlr4.Runtime;
using Antlr4.Runtime.Tree;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Makes the nodes that are built of a few words: references, quantities, limits, needs, values, tests.</summary>
internal sealed class PhraseBuilder(TokenWords words)
{
    private const int MostValues = 1000;

    public ReferenceSyntax Reference(ReferenceContext? context, ParserRuleContext parent)
    {
        if (context is null)
        {
            var missing = TokenWords.Missing(parent);
            return new ReferenceSyntax(missing.Span, missing, []);
        }

        var name = words.Word(context.name(), context);
        var indices = context.index() is { } index ? Values(index.value()) : [];
        return new ReferenceSyntax(TokenWords.SpanOf(context), name, indices);
    }

    public ImmutableArray<ReferenceSyntax> OptionalInstruments(InstrumentsContext? context) => context is null ? [] : References(context.reference());

    public ImmutableArray<ReferenceSyntax> References(ReferenceContext[] contexts)
    {
        var references = ImmutableArray.CreateBuilder<ReferenceSyntax>(contexts.Length);
        foreach (var context in contexts)
        {
            references.Add(Reference(context, context));
        }

        return references.MoveToImmutable();
    }

    public ImmutableArray<WordSyntax> Values(ValueContext[] contexts)
    {
        var values = ImmutableArray.CreateBuilder<WordSyntax>(contexts.Length);
        foreach (var context in contexts)
        {
            values.Add(words.Word(context, context));
        }

        return values.MoveToImmutable();
    }

    public ValuesSyntax Values(ValuesContext? context, ParserRuleContext parent)
    {
        if (context is null)
        {
            return new ValuesSyntax(TokenWords.Missing(parent).Span, []);
        }

        var values = context.RANGE() is { } range ? Counted(context, context.INTEGER(), range.Symbol) : Values(context.value());
        return new ValuesSyntax(TokenWords.SpanOf(context), values);
    }

    /// <summary>The first value of a parameter, or its range.</summary>
    public ValuesSyntax FirstValues(FirstValuesContext? context, ParserRuleContext parent)
    {
        if (context is null)
        {
            return new ValuesSyntax(TokenWords.Missing(parent).Span, []);
        }

        ImmutableArray<WordSyntax> values =
            context.RANGE() is { } range ? Counted(context, context.INTEGER(), range.Symbol) : [words.Word(context, parent)];
        return new ValuesSyntax(TokenWords.SpanOf(context), values);
    }

    public TestSyntax Test(TestContext? context, ParserRuleContext parent)
    {
        if (context is null)
        {
            var missing = TokenWords.Missing(parent);
            return new TestSyntax(missing.Span, missing, Negated: false, Value: null);
        }

        var value = context.IS() is null ? null : words.Word(context.value(), context);
        return new TestSyntax(TokenWords.SpanOf(context), words.Word(context.name(), context), context.NOT() is not null, value);
    }

    public QuantitySyntax Quantity(QuantityContext? context, ParserRuleContext parent)
    {
        if (context is null)
        {
            var missing = TokenWords.Missing(parent).Span;
            return new QuantitySyntax(missing, new NumberSyntax(missing, 0), null, QuantityForm.Plain, null, null);
        }

        NumberSyntax? first = null;
        NumberSyntax? second = null;
        UnitSyntax? firstUnit = null;
        UnitSyntax? secondUnit = null;
        var form = QuantityForm.Plain;
        foreach (var child in context.children)
        {
            switch (child)
            {
                case NumberContext number when form == QuantityForm.Plain:
                    first = Number(number);
                    break;
                case NumberContext number:
                    second = Number(number);
                    break;
                case UnitContext unit when form == QuantityForm.Plain:
                    firstUnit = Unit(unit);
                    break;
                case UnitContext unit:
                    secondUnit = Unit(unit);
                    break;
                case ITerminalNode { Symbol.Type: PLUS_MINUS }:
                    form = QuantityForm.PlusMinus;
                    break;
                case ITerminalNode { Symbol.Type: RANGE }:
                    form = QuantityForm.Range;
                    break;
            }
        }

        var span = TokenWords.SpanOf(context);
        return new QuantitySyntax(span, first ?? new NumberSyntax(new TextSpan(span.Start, 0), 0), firstUnit, form, second, secondUnit);
    }

    public LimitSyntax? OptionalLimit(ITerminalNode? expect, LimitContext? context, ParserRuleContext parent) =>
        expect is null ? null : Limit(context, parent);

    public LimitSyntax Limit(LimitContext? context, ParserRuleContext parent)
    {
        var relation = context?.Start.Type switch
        {
            AT_MOST => LimitRelation.AtMost,
            AT_LEAST => LimitRelation.AtLeast,
            LESS_THAN => LimitRelation.Less,
            MORE_THAN => LimitRelation.More,
            _ => LimitRelation.Within,
        };
        var quantity = Quantity(context?.quantity(), context ?? parent);
        return new LimitSyntax(context is null ? quantity.Span : TokenWords.SpanOf(context), relation, quantity);
    }

    public ImmutableArray<NeedSyntax> Needs(NeedsContext? context) => Joined(
        context,
        (NeedContext need, bool isAlternative) => new NeedSyntax(
            TokenWords.SpanOf(need),
            Reference(need.reference(), need),
            need.needState() is { } word ? words.Word(word, need) : null,
            need.AT() is null ? null : words.Word(need.position(), need),
            isAlternative));

    /// <summary>The parts behind <c>behind</c>.</summary>
    public ImmutableArray<NeedSyntax> Hiders(HidersContext? context) => Joined(
        context,
        (ReferenceContext part, bool isAlternative) => new NeedSyntax(TokenWords.SpanOf(part), Reference(part, part), null, null, isAlternative));

    /// <summary>What stands between commas and <c>or</c>s; each is told whether an <c>or</c> stands before it.</summary>
    private static ImmutableArray<NeedSyntax> Joined<TEntry>(ParserRuleContext? context, Func<TEntry, bool, NeedSyntax> make)
        where TEntry : ParserRuleContext
    {
        var needs = ImmutableArray.CreateBuilder<NeedSyntax>();
        var isAlternative = false;
        foreach (var child in context?.children ?? [])
        {
            if (child is TEntry entry)
            {
                needs.Add(make(entry, isAlternative && needs.Count > 0));
            }
            else if (child is ITerminalNode { Symbol.Type: OR or COMMA } sign)
            {
                isAlternative = sign.Symbol.Type == OR;
            }
        }

        return needs.ToImmutable();
    }

    public AmountSyntax? OptionalAmount(AmountContext? context)
    {
        if (context is null)
        {
            return null;
        }

        var span = TokenWords.SpanOf(context);
        return new AmountSyntax(span, context.Start.Type == REST ? null : words.Whole(span));
    }

    public PiecesSyntax? OptionalPieces(PiecesContext? context) =>
        context is null ? null : new PiecesSyntax(TokenWords.SpanOf(context), words.Count(context.count(), context), words.Word(context.name(), context));

    private NumberSyntax Number(NumberContext context)
    {
        var value = 0.0;
        var fraction = (Numerator: 0.0, Denominator: 1.0);
        var digits = 0;
        var divided = false;
        var negative = false;
        foreach (var child in context.children ?? [])
        {
            if (child is not ITerminalNode { Symbol: var token })
            {
                continue;
            }

            switch (token.Type)
            {
                case MINUS:
                    negative = true;
                    break;
                case SLASH:
                    divided = true;
                    break;
                case INTEGER when divided:
                    fraction.Denominator = words.Number(token);
                    break;
                case INTEGER when digits++ > 0:
                    fraction.Numerator = words.Number(token);
                    break;
                case INTEGER or DECIMAL:
                    value = words.Number(token);
                    break;
            }
        }

        if (divided)
        {
            // "3/8" has its numerator where "1 3/8" has the whole number.
            value = digits == 1 ? value / fraction.Denominator : value + (fraction.Numerator / fraction.Denominator);
        }

        // Where something else stands, its finding may be left to another on that line, and nobody must judge a number that is not there.
        return context.exception is not null || context.children?.Any(child => child is IErrorNode) == true
            ? new NumberSyntax(new TextSpan(TokenWords.SpanOf(context).Start, 0), 0)
            : new NumberSyntax(TokenWords.SpanOf(context), double.IsFinite(value) ? (negative ? -value : value) : 0);
    }

    private UnitSyntax Unit(UnitContext context)
    {
        // Word by word: between two of them may stand blanks, the end of a line and a comment.
        var written = context.children is [ITerminalNode { Symbol: var only }]
            ? words.TextOf(only)
            : string.Concat((context.children ?? []).Select(child => child is ITerminalNode { Symbol: var token } ? words.TextOf(token) : words.TextOf(TokenWords.SpanOf((ParserRuleContext)child))));
        return new UnitSyntax(TokenWords.SpanOf(context), written.Replace('\u00B7', '.').Replace('\u22C5', '.'));
    }

    // The first and the last stand where they are written, those between on the "..".
    private ImmutableArray<WordSyntax> Counted(ParserRuleContext context, ITerminalNode[] ends, IToken range)
    {
        if (ends.Length < 2)
        {
            return [];
        }

        var from = words.Whole(TokenWords.SpanOf(ends[0].Symbol));
        var to = words.Whole(TokenWords.SpanOf(ends[1].Symbol));
        if (to - from >= MostValues)
        {
            words.ReportLongRange(TokenWords.SpanOf(context), MostValues);
            return [];
        }

        var values = ImmutableArray.CreateBuilder<WordSyntax>();
        for (var i = from; i <= to; i++)
        {
            var place = i == from ? ends[0].Symbol : i == to ? ends[1].Symbol : range;
            values.Add(new WordSyntax(TokenWords.SpanOf(place), i.ToString(CultureInfo.InvariantCulture)));
        }

        return values.ToImmutable();
    }
}
