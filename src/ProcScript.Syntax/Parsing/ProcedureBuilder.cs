using System.Collections.Immutable;
using Antlr4.Runtime;
using ProcScript.Syntax.Nodes;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Makes what stands in the body of a procedure.</summary>
internal sealed class ProcedureBuilder(TokenWords words, PhraseBuilder phrases, PropertyBuilder properties)
{
    public ImmutableArray<ParameterSyntax> Parameters(ParametersContext? context)
    {
        if (context is null)
        {
            return [];
        }

        var parameters = ImmutableArray.CreateBuilder<ParameterSyntax>();
        foreach (var child in context.children)
        {
            switch (child)
            {
                case ParameterContext c:
                    parameters.Add(Parameter(c, c.name(), c.firstValues()));
                    break;
                case FurtherParameterContext c when c.IN() is not null:
                    parameters.Add(Parameter(c, c.name(), c.firstValues()));
                    break;
                case FurtherParameterContext c when parameters.Count > 0:
                    parameters[^1] = WithValue(parameters[^1], words.Word(c, context));
                    break;
            }
        }

        return parameters.ToImmutable();
    }

    private ParameterSyntax Parameter(ParserRuleContext context, NameContext? name, FirstValuesContext? values) =>
        new(TokenWords.SpanOf(context), words.Word(name, context), phrases.FirstValues(values, context));

    private static ParameterSyntax WithValue(ParameterSyntax parameter, WordSyntax value) => new(
        parameter.Span.Cover(value.Span),
        parameter.Name,
        new ValuesSyntax(parameter.Values.Span.Cover(value.Span), parameter.Values.Values.Add(value)));

    public ImmutableArray<SyntaxNode> Items(ProcedureBlockContext? context) => Inner<ProcedureItemContext>(context);

    /// <summary>The nodes of a block whose children of type <typeparamref name="TEntry"/> each hold one.</summary>
    private ImmutableArray<SyntaxNode> Inner<TEntry>(ParserRuleContext? block)
        where TEntry : ParserRuleContext
    {
        if (block?.children is not { } children)
        {
            return [];
        }

        var nodes = ImmutableArray.CreateBuilder<SyntaxNode>(children.Count);
        foreach (var child in children)
        {
            if (child is TEntry { ChildCount: > 0 } entry && entry.GetChild(0) is ParserRuleContext inner && Node(inner) is { } node)
            {
                nodes.Add(node);
            }
        }

        return nodes.ToImmutable();
    }

    private ImmutableArray<SyntaxNode> Steps(StepBlockContext? context) => Inner<StepContext>(context);

    private ImmutableArray<SyntaxNode> Rules(RuleBlockContext? context) => Inner<RefitRuleContext>(context);

    private SyntaxNode? Node(ParserRuleContext context)
    {
        var span = TokenWords.SpanOf(context);
        return context switch
        {
            GoalContext c => new GoalSyntax(span, words.Word(c.verb(), c), phrases.Reference(c.reference(), c)),
            StageContext c => new StageSyntax(span, words.Text(c.text(), c), Steps(c.stepBlock())),
            WorkBlockContext c => new WorkSyntax(span, Steps(c.stepBlock())),
            DoCallContext c => new DoSyntax(span, words.Word(c.name(), c), phrases.Values(c.value()), c.whereNeeded() is not null),
            RefitRulesContext c when c.NEEDS() is not null =>
                properties.Needs(c, null, c.REFIT(), c.NEEDS(), c.needs()),
            RefitRulesContext c => new RefitSyntax(span, Rules(c.ruleBlock())),
            EachItemsContext c => Each(c, c.name(), c.values(), Items(c.procedureBlock())),
            EachStepsContext c => Each(c, c.name(), c.values(), Steps(c.stepBlock())),
            EachRulesContext c => Each(c, c.name(), c.values(), Rules(c.ruleBlock())),
            WhenItemsContext c => new WhenSyntax(span, phrases.Test(c.test(), c), Items(c.procedureBlock())),
            WhenStepsContext c => new WhenSyntax(span, phrases.Test(c.test(), c), Steps(c.stepBlock())),
            WhenRulesContext c => new WhenSyntax(span, phrases.Test(c.test(), c), Rules(c.ruleBlock())),
            ActionContext c => Action(c, words.Word((ParserRuleContext?)c.actionVerb() ?? c.snugVerb(), c), c.deed()),
            StripStepContext c when c.alert() is null => Action(c, words.Word(c.STRIP().Symbol), c.deed()),
            TextActionContext c => TextAction(
                c, c.text(), phrases.OptionalInstruments(c.instruments()), phrases.OptionalLimit(c.EXPECT(), c.limit(), c), c.needsClause(), c.background(), c.propertyBlock()),
            RecordActionContext c => TextAction(c, c.text(), [], null, c.needsClause(), null, c.propertyBlock()),
            PauseActionContext c => TextAction(c, c.text(), [], null, c.needsClause(), null, c.propertyBlock()),
            DiscardContext c => new DiscardSyntax(
                span, phrases.OptionalAmount(c.amount()), phrases.Reference(c.reference(), c), words.Text(c.text(), c)),
            OrderRuleContext c when c.whileClause() is { } open => new OpenRuleSyntax(
                span, words.Word(c.verb(), c), phrases.Reference(c.reference(), c), While(open)),
            OrderRuleContext c => new OrderRuleSyntax(
                span,
                words.Word(c.verb(), c),
                phrases.Reference(c.reference(), c),
                c.TO() is null ? null : words.Word(c.position(), c),
                OptionalOrder(c.order()) ?? MissingOrder(c)),
            CheckRuleContext c => CheckRule(
                c, c.text(), phrases.OptionalInstruments(c.instruments()), phrases.OptionalLimit(c.EXPECT(), c.limit(), c), c.needsClause(), c.order(), c.propertyBlock()),
            RecordRuleContext c => CheckRule(c, c.text(), [], null, c.needsClause(), c.order(), null),
            PauseRuleContext c => CheckRule(c, c.text(), [], null, null, c.order(), c.propertyBlock()),
            SnugRuleContext c => new SnugRuleSyntax(
                span, words.Word(c.snugVerb(), c), phrases.References(c.reference()), OptionalOrder(c.order())),
            RetorqueRuleContext c => Retorque(c),
            TestRuleContext c => new TestRuleSyntax(
                span, words.Text(c.text(), c), OptionalOrder(c.order()), Inner<TestItemContext>(c.testBlock())),
            PowerClauseContext c => new PowerSyntax(span, phrases.References(c.reference())),
            WhileClauseContext c => While(c),
            _ => properties.Property(context),
        };
    }

    private WhileSyntax While(WhileClauseContext context) =>
        new(TokenWords.SpanOf(context), phrases.References(context.reference()), words.Text(context.text(), context));

    private EachSyntax Each(ParserRuleContext context, NameContext? name, ValuesContext? values, ImmutableArray<SyntaxNode> body) =>
        new(TokenWords.SpanOf(context), words.Word(name, context), phrases.Values(values, context), body);

    private ActionSyntax Action(ParserRuleContext context, WordSyntax verb, DeedContext? deed) => new(
        TokenWords.SpanOf(context),
        verb,
        phrases.OptionalAmount(deed?.amount()),
        phrases.OptionalPieces(deed?.pieces()),
        phrases.Reference(deed?.reference(), context),
        deed?.TO() is null ? null : words.Word(deed.position(), context),
        deed?.whereNeeded() is not null,
        deed?.background() is not null,
        properties.Block(deed?.propertyBlock()));

    private TextActionSyntax TextAction(
        ParserRuleContext context,
        TextContext? text,
        ImmutableArray<ReferenceSyntax> instruments,
        LimitSyntax? expect,
        NeedsClauseContext? needs,
        BackgroundContext? background,
        PropertyBlockContext? block) => new(
            TokenWords.SpanOf(context),
            words.FirstWord(context),
            words.Text(text, context),
            instruments,
            expect,
            properties.OptionalNeeds(needs),
            background is not null,
            properties.Block(block));

    private CheckRuleSyntax CheckRule(
        ParserRuleContext context,
        TextContext? text,
        ImmutableArray<ReferenceSyntax> instruments,
        LimitSyntax? expect,
        NeedsClauseContext? needs,
        OrderContext? order,
        PropertyBlockContext? block) => new(
            TokenWords.SpanOf(context),
            words.FirstWord(context),
            words.Text(text, context),
            instruments,
            expect,
            properties.OptionalNeeds(needs),
            OptionalOrder(order),
            properties.Block(block));

    private OrderSyntax? OptionalOrder(OrderContext? context) => context is null
        ? null
        : new OrderSyntax(
            TokenWords.SpanOf(context),
            words.FirstWord(context),
            words.Word(context.orderVerb(), context),
            phrases.Reference(context.reference(), context),
            context.TO() is null ? null : words.Word(context.position(), context));

    private RetorqueRuleSyntax Retorque(RetorqueRuleContext context)
    {
        var references = context.reference();
        OrderSyntax? order = null;
        if (context.orderVerb() is { } verb && (context.BEFORE() ?? context.AFTER()) is { } keyword)
        {
            // What the rule is ordered by stands behind the joints.
            var target = references.Length > 1 && references[^1].Start.StartIndex > verb.Start.StartIndex ? references[^1] : null;
            var (word, anchor) = (words.Word(keyword.Symbol), phrases.Reference(target, context));
            order = new OrderSyntax(word.Span.Cover(anchor.Span), word, words.Word(verb, context), anchor);
            references = target is null ? references : references[..^1];
        }

        return new RetorqueRuleSyntax(
            TokenWords.SpanOf(context),
            phrases.References(references),
            properties.OptionalNeeds(context.needsClause()),
            order,
            words.OptionalText(context.text()));
    }

    private OrderSyntax MissingOrder(ParserRuleContext parent)
    {
        var missing = TokenWords.Missing(parent);
        return new OrderSyntax(missing.Span, missing, missing, phrases.Reference(null, parent));
    }
}
