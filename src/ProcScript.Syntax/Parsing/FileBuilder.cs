using System.Collections.Immutable;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Makes the tree of a file from what the generated parser recognised.</summary>
internal sealed class FileBuilder
{
    private readonly TokenWords _words;
    private readonly PhraseBuilder _phrases;
    private readonly PropertyBuilder _properties;
    private readonly MemberBuilder _members;
    private readonly ProcedureBuilder _procedures;

    public FileBuilder(SourceText text, FindingLog log)
    {
        _words = new TokenWords(text, log);
        _phrases = new PhraseBuilder(_words);
        _properties = new PropertyBuilder(_words, _phrases);
        _members = new MemberBuilder(_words, _phrases, _properties);
        _procedures = new ProcedureBuilder(_words, _phrases, _properties);
    }

    public FileSyntax Build(FileContext context)
    {
        var uses = ImmutableArray.CreateBuilder<UseSyntax>();
        var declarations = ImmutableArray.CreateBuilder<DeclarationSyntax>();
        var span = new TextSpan(0, 0);
        foreach (var child in context.children ?? [])
        {
            switch (child)
            {
                case UseDirectiveContext use:
                    uses.Add(new UseSyntax(TokenWords.SpanOf(use), _words.Text(use.text(), use)));
                    span = span.Length == 0 ? uses[^1].Span : span.Cover(uses[^1].Span);
                    break;
                case CatalogDeclarationContext or MachineDeclarationContext or ProcedureDeclarationContext:
                    declarations.Add(Declaration(child));
                    span = span.Length == 0 ? declarations[^1].Span : span.Cover(declarations[^1].Span);
                    break;
            }
        }

        return new FileSyntax(span, uses.ToImmutable(), declarations.ToImmutable());
    }

    private DeclarationSyntax Declaration(object tree) => tree switch
    {
        CatalogDeclarationContext c => new CatalogSyntax(
            TokenWords.SpanOf(c),
            _words.FirstWord(c),
            _words.Word(c.name(), c),
            _words.OptionalText(c.text()),
            _properties.Block(c.propertyBlock())),
        MachineDeclarationContext c => new MachineSyntax(
            TokenWords.SpanOf(c), _words.Word(c.name(), c), _words.OptionalText(c.text()), _members.Block(c.memberBlock())),
        ProcedureDeclarationContext c => Procedure(c),
        _ => throw new InvalidOperationException($"{tree.GetType().Name} is not a declaration."),
    };

    private ProcedureSyntax Procedure(ProcedureDeclarationContext context)
    {
        var names = context.name();
        return new ProcedureSyntax(
            TokenWords.SpanOf(context),
            _words.Word(names.Length > 0 ? names[0] : null, context),
            _words.OptionalText(context.text()),
            _procedures.Parameters(context.parameters()),
            _words.Word(names.Length > 1 ? names[1] : null, context),
            [.. context.forVariants().Select(variants => new ForVariantsSyntax(
                TokenWords.SpanOf(variants), _words.FirstWord(variants), [.. variants.name().Select(name => _words.Word(name, variants))]))],
            _procedures.Items(context.procedureBlock()));
    }
}
