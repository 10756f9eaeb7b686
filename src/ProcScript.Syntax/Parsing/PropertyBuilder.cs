using System.Collections.Immutable;
using Antlr4.Runtime;
using Antlr4.Runtime.Tree;
using ProcScript.Syntax.Nodes;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Makes the properties of a block.</summary>
internal sealed class PropertyBuilder(TokenWords words, PhraseBuilder phrases)
{
    public ImmutableArray<MemberSyntax> Block(PropertyBlockContext? context) =>
        context is null ? [] : Among(context.children);

    /// <summary>What stands among the children of a context.</summary>
    public ImmutableArray<MemberSyntax> Among(IList<IParseTree>? children)
    {
        if (children is null)
        {
            return [];
        }

        var properties = ImmutableArray.CreateBuilder<MemberSyntax>(children.Count);
        foreach (var child in children)
        {
            if (Member(child) is { } member)
            {
                properties.Add(member);
            }
        }

        return properties.ToImmutable();
    }

    /// <summary>A property, or a <c>when</c> around some.</summary>
    private MemberSyntax? Member(IParseTree tree) => tree is WhenPropertiesContext when
        ? new WhenSyntax(Span(when), phrases.Test(when.test(), when), [.. Block(when.propertyBlock())])
        : Property(tree);

    /// <summary>The property that a context is, or null where it is something else or nothing came of it.</summary>
    public PropertySyntax? Property(IParseTree tree) => tree switch
    {
        TextPropertyContext c => new TextPropertySyntax(Span(c), Keyword(c), words.Text(c.text(), c)),
        QuantityPropertyContext c => new QuantityPropertySyntax(Span(c), Keyword(c), phrases.Quantity(c.quantity(), c)),
        MassPropertyContext c when c.NOT_KNOWN() is not null => new UnknownPropertySyntax(Span(c), Keyword(c), words.Text(c.text(), c)),
        MassPropertyContext c => new QuantityPropertySyntax(Span(c), Keyword(c), phrases.Quantity(c.quantity(), c)),
        TorquePropertyContext c => Torque(c),
        NamesPropertyContext c => new NamesPropertySyntax(Span(c), Keyword(c), phrases.References(c.reference())),
        BehindPropertyContext c => new NeedsPropertySyntax(Span(c), Keyword(c), NeedsPhase.Both, phrases.Hiders(c.hiders())),
        WayPropertyContext c when c.NEEDS() is not null => new NeedsPropertySyntax(
            Span(c), words.Words(c.WAY(), c.NEEDS(), c), NeedsPhase.Both, phrases.Needs(c.needs())),
        WayPropertyContext c => new NeedsPropertySyntax(
            Span(c), words.Words(c.WAY(), c.BEHIND(), c), NeedsPhase.Both, phrases.Hiders(c.hiders())),
        RenewPropertyContext c => new NamesPropertySyntax(
            Span(c), words.Words(c.RENEW(), c.WITH(), c), phrases.References(c.reference())),
        PatternPropertyContext c => Choice(c),
        GripPropertyContext c => Choice(c),
        PeoplePropertyContext c => new PeoplePropertySyntax(Span(c), Keyword(c), words.Count(c.count(), c)),
        ThreadPropertyContext c when c.LOCKER() is not null => new FlagPropertySyntax(Span(c), words.Words(c.THREAD(), c.LOCKER(), c)),
        ThreadPropertyContext c => Thread(c),
        GradePropertyContext c => Grade(c),
        PiecesPropertyContext c => new PiecesPropertySyntax(
            Span(c), Keyword(c), words.Count(c.count(), c), phrases.Reference(c.reference(), c)),
        UsesPropertyContext c => new UsesPropertySyntax(
            Span(c), Keyword(c), phrases.Quantity(c.quantity(), c), phrases.Reference(c.reference(), c)),
        ChangePropertyContext c => Change(c),
        SingleUsePropertyContext c => new FlagPropertySyntax(Span(c), new WordSyntax(Span(c), "single use")),
        VerbsPropertyContext c => Verbs(c),
        ReusePropertyContext c => new TextPropertySyntax(Span(c), words.Words(c.REUSE(), c.BECAUSE(), c), words.Text(c.text(), c)),
        KeepPropertyContext c => new FlagPropertySyntax(Span(c), new WordSyntax(Span(c), "keep in order")),
        PrevailingPropertyContext c => new LimitPropertySyntax(Span(c), Keyword(c), phrases.Limit(c.limit(), c)),
        FlagPropertyContext c => new FlagPropertySyntax(Span(c), Keyword(c)),
        VerifyPropertyContext c => Verify(c),
        VoltagePropertyContext c => new VoltagePropertySyntax(
            Span(c),
            Keyword(c),
            phrases.Quantity(c.quantity(), c),
            (c.AC() ?? c.DC()) is { } current ? words.Word(current.Symbol) : null),
        StripPropertyContext c when c.alert() is { } alert => Alert(c, alert, NeedsPhase.Strip),
        StripPropertyContext c when c.figure() is { } figure => Figure(c, figure, NeedsPhase.Strip),
        StripPropertyContext c => Needs(c, c.STRIP(), null, c.NEEDS(), c.needs()),
        NeedsPropertyContext c => Needs(c, null, null, c.NEEDS(), c.needs()),
        AlertPropertyContext c => Alert(c, c.alert(), NeedsPhase.Both),
        FigurePropertyContext c => Figure(c, c.figure(), NeedsPhase.Both),
        AlertContext c => Alert(c, c, NeedsPhase.Both),
        RefitAlertContext c => Alert(c, c.alert(), NeedsPhase.Refit),
        StripStepContext c when c.alert() is { } alert => Alert(c, alert, NeedsPhase.Strip),
        AtClauseContext c => new TextPropertySyntax(Span(c), Keyword(c), words.Text(c.text(), c)),
        InlineAtContext c => new TextPropertySyntax(Span(c), Keyword(c), words.Text(c.text(), c)),
        NamesClauseContext c => new NamesPropertySyntax(Span(c), Keyword(c), phrases.References(c.reference())),
        InlineNamesContext c => new NamesPropertySyntax(Span(c), Keyword(c), [phrases.Reference(c.reference(), c)]),
        CoverClauseContext c => Cover(c, c.cover()),
        InlineCoverContext c => Cover(c, c.cover()),
        RefitPropertyContext c when c.NEEDS() is not null => Needs(c, null, c.REFIT(), c.NEEDS(), c.needs()),
        RefitPropertyContext c when c.alert() is { } alert => Alert(c, alert, NeedsPhase.Refit),
        RefitPropertyContext c when c.figure() is { } figure => Figure(c, figure, NeedsPhase.Refit),
        RefitPropertyContext c => new RefitPropertySyntax(Span(c), Keyword(c), Block(c.propertyBlock())),
        _ => null,
    };

    /// <summary>The needs behind a text action or a check.</summary>
    public NeedsPropertySyntax? OptionalNeeds(NeedsClauseContext? context) =>
        context is null ? null : Needs(context, context.STRIP(), context.REFIT(), context.NEEDS(), context.needs());

    /// <summary>The needs of a context; <paramref name="strip"/> or <paramref name="refit"/> says that they bind one way only.</summary>
    public NeedsPropertySyntax Needs(
        ParserRuleContext context,
        ITerminalNode? strip,
        ITerminalNode? refit,
        ITerminalNode? keyword,
        NeedsContext? needs)
    {
        var phase = strip is not null ? NeedsPhase.Strip : refit is not null ? NeedsPhase.Refit : NeedsPhase.Both;
        var word = keyword is null ? TokenWords.Missing(context) : words.Word(keyword.Symbol);
        return new NeedsPropertySyntax(Span(context), word, phase, phrases.Needs(needs));
    }

    private static Text.TextSpan Span(ParserRuleContext context) => TokenWords.SpanOf(context);

    private WordSyntax Keyword(ParserRuleContext context) => words.FirstWord(context);

    /// <summary>The alert; null where its signal word is missing, which is a finding.</summary>
    private AlertSyntax? Alert(ParserRuleContext context, AlertContext? alert, NeedsPhase phase) =>
        alert is { Start.Type: DANGER or WARNING or CAUTION or NOTICE }
            ? new AlertSyntax(Span(context), Keyword(alert), phase, words.Text(alert.text(), alert))
            : null;

    private VerbsPropertySyntax Verbs(VerbsPropertyContext context)
    {
        var texts = context.text();
        return new VerbsPropertySyntax(Span(context), Keyword(context), words.Text(texts.FirstOrDefault(), context), words.Text(texts.ElementAtOrDefault(1), context));
    }

    private FigurePropertySyntax Figure(ParserRuleContext context, FigureContext figure, NeedsPhase phase)
    {
        var texts = figure.text();
        return new FigurePropertySyntax(
            Span(context), Keyword(figure), phase, words.Text(texts.FirstOrDefault(), figure), words.OptionalText(texts.ElementAtOrDefault(1)));
    }

    private VerifyPropertySyntax Verify(VerifyPropertyContext context)
    {
        var texts = context.text();
        var isAtWords = context.AT() is not null && context.reference() is null;
        return new VerifyPropertySyntax(
            Span(context),
            Keyword(context),
            words.Text(texts.FirstOrDefault(), context),
            phrases.OptionalInstruments(context.instruments()),
            context.reference() is { } item ? phrases.Reference(item, context) : null,
            isAtWords ? words.Text(texts.ElementAtOrDefault(1), context) : null,
            phrases.OptionalLimit(context.EXPECT(), context.limit(), context),
            Block(context.propertyBlock()));
    }

    private TorquePropertySyntax Torque(TorquePropertyContext context)
    {
        var stages = ImmutableArray.CreateBuilder<QuantitySyntax>();
        var angles = ImmutableArray.CreateBuilder<QuantitySyntax>();
        var quantities = stages;
        foreach (var child in context.children)
        {
            if (child is ITerminalNode { Symbol.Type: PLUS })
            {
                quantities = angles;
            }
            else if (child is QuantityContext quantity)
            {
                quantities.Add(phrases.Quantity(quantity, context));
            }
        }

        if (stages.Count == 0)
        {
            stages.Add(phrases.Quantity(null, context));
        }

        return new TorquePropertySyntax(Span(context), Keyword(context), stages.ToImmutable(), angles.ToImmutable());
    }

    /// <summary>The word, or the two, behind the one that names the property.</summary>
    private ChoicePropertySyntax Choice(ParserRuleContext context) => new(
        Span(context),
        Keyword(context),
        context.children.Count > 1 && context.children[1] is ITerminalNode first
            ? words.Words(first, context.children[^1] as ITerminalNode, context)
            : TokenWords.Missing(context));

    private ChangePropertySyntax Change(ChangePropertyContext context) => new(
        Span(context),
        Keyword(context),
        phrases.Reference(context.reference().FirstOrDefault(), context),
        (context.ADD() ?? context.TAKE()) is { } direction ? words.Word(direction.Symbol) : TokenWords.Missing(context),
        phrases.Quantity(context.quantity(), context),
        context.OF() is null ? null : phrases.Reference(context.reference().ElementAtOrDefault(1), context));

    private ThreadPropertySyntax Thread(ThreadPropertyContext context)
    {
        var (text, span) = Designation(context.threadValue(), context.threadValue()?.text(), context);
        return new ThreadPropertySyntax(Span(context), Keyword(context), text, span);
    }

    private GradePropertySyntax Grade(GradePropertyContext context)
    {
        var (text, span) = Designation(context.gradeValue(), context.gradeValue()?.text(), context);
        return new GradePropertySyntax(Span(context), Keyword(context), text, span);
    }

    private (string Text, Text.TextSpan Span) Designation(ParserRuleContext? value, TextContext? quoted, ParserRuleContext parent)
    {
        if (value is null)
        {
            return ("", TokenWords.Missing(parent).Span);
        }

        return (words.OptionalText(quoted)?.Value ?? Marking(Written(value)), Span(value));
    }

    /// <summary>The words of a marking, without a comment between them, wherever the lexer parts them: the layout puts blanks there.</summary>
    private IEnumerable<string> Written(IParseTree node) => node is ITerminalNode { Symbol: var token }
        ? TokenWords.SpanOf(token).Length > 0 ? [words.TextOf(token)] : []
        : Enumerable.Range(0, node.ChildCount).SelectMany(child => Written(node.GetChild(child)));

    /// <summary>
    /// A marking without the blanks that mean nothing in it; those stay that part a size from its fraction, and a series or a hand from the
    /// thread: <c>1 1/8-7 UNC LH</c>.
    /// </summary>
    private static string Marking(IEnumerable<string> written) =>
        written.Aggregate("", (marking, word) => MeansBlank(marking, word) ? $"{marking} {word}" : marking + word);

    private static bool MeansBlank(string marking, string word) =>
        marking.Length > 0 && char.IsAsciiLetterOrDigit(marking[^1]) && char.IsAsciiLetterOrDigit(word[0]);

    private CoverSyntax Cover(ParserRuleContext context, CoverContext cover) => new(
        Span(context),
        Keyword(context),
        words.Count(cover.count(), cover),
        words.Word(cover.name(), cover),
        phrases.Reference(cover.reference(), cover),
        Clauses(context));

    /// <summary>The clauses of a joint or a cover: the inline ones, then those of the block.</summary>
    public ImmutableArray<MemberSyntax> Clauses(ParserRuleContext context)
    {
        var clauses = ImmutableArray.CreateBuilder<MemberSyntax>();
        foreach (var child in context.children)
        {
            if (child is PropertyBlockContext block)
            {
                clauses.AddRange(Block(block));
            }
            else if (Property(child) is { } clause)
            {
                clauses.Add(clause);
            }
        }

        return clauses.ToImmutable();
    }
}
