using System.Collections.Immutable;
using Antlr4.Runtime;
using ProcScript.Syntax.Nodes;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Makes what stands in the body of a machine or a part.</summary>
internal sealed class MemberBuilder(TokenWords words, PhraseBuilder phrases, PropertyBuilder properties)
{
    public ImmutableArray<MemberSyntax> Block(MemberBlockContext? context)
    {
        if (context?.children is not { } children)
        {
            return [];
        }

        var members = ImmutableArray.CreateBuilder<MemberSyntax>(children.Count);
        foreach (var child in children)
        {
            if (child is not MemberContext { ChildCount: > 0 } member || member.GetChild(0) is not ParserRuleContext inner
                || Member(inner) is not { } node)
            {
                continue;
            }

            if (node is NeedsPropertySyntax { Phase: NeedsPhase.Both, Keyword.Text: "needs" } needs
                && members.Count > 0 && members[^1] is AsideSyntax { Needs: [] } aside)
            {
                members[^1] = new AsideSyntax(aside.Span.Cover(needs.Span), aside.How, needs.Needs);
            }
            else
            {
                members.Add(node);
            }
        }

        return members.ToImmutable();
    }

    private MemberSyntax? Member(ParserRuleContext context)
    {
        var span = TokenWords.SpanOf(context);
        return context switch
        {
            OptionDeclarationContext c => new OptionSyntax(span, words.Word(c.name(), c), words.OptionalText(c.text())),
            EnergyDeclarationContext c => new EnergySyntax(
                span, phrases.Reference(c.reference(), c), words.OptionalText(c.text()), properties.Block(c.propertyBlock())),
            FluidDeclarationContext c => new FluidSyntax(
                span, phrases.Reference(c.reference(), c), words.OptionalText(c.text()), properties.Block(c.propertyBlock())),
            ControlDeclarationContext c => new ControlSyntax(
                span,
                phrases.Reference(c.reference(), c),
                words.OptionalText(c.text()),
                Positions(c.controlBlock()),
                properties.Among(c.controlBlock()?.children)),
            PlaceDeclarationContext c => new PlaceSyntax(
                span, phrases.Reference(c.reference(), c), words.OptionalText(c.text()), words.Count(c.count(), c)),
            PartDeclarationContext c => new PartSyntax(
                span, phrases.Reference(c.reference(), c), words.OptionalText(c.text()), Block(c.memberBlock())),
            JointDeclarationContext c => new JointSyntax(
                span,
                words.FirstWord(c),
                words.Count(c.count(), c),
                words.Word(c.name(), c),
                phrases.Reference(c.reference(), c),
                properties.Clauses(c)),
            AsideClauseContext c => new AsideSyntax(span, words.OptionalText(c.text()), []),
            EachMembersContext c => new EachSyntax(
                span, words.Word(c.name(), c), phrases.Values(c.values(), c), [.. Block(c.memberBlock())]),
            WhenMembersContext c => new WhenSyntax(span, phrases.Test(c.test(), c), [.. Block(c.memberBlock())]),
            _ => properties.Property(context),
        };
    }

    private ImmutableArray<WordSyntax> Positions(ControlBlockContext? block)
    {
        var contexts = block?.position() ?? [];
        var positions = ImmutableArray.CreateBuilder<WordSyntax>(contexts.Length);
        foreach (var position in contexts)
        {
            positions.Add(words.Word(position, position));
        }

        return positions.MoveToImmutable();
    }
}
