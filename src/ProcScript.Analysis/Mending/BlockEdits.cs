using System.Collections.Immutable;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Mending;

/// <summary>Writes properties into the blocks of one text. Several for one block make one edit of it, so that any choice of them may be applied.</summary>
internal static class BlockEdits
{
    private const string Refit = "refit";
    private const string Tool = "tool";
    private const string How = "how";

    /// <summary>Why a property cannot be written, as the rest of a sentence; null where it can.</summary>
    public static string? Obstacle(SyntaxTree tree, PropertyChange change)
    {
        if (OwnerOf(tree, change.Owner.Span) is not { } owner)
        {
            return "nothing that has a block stands there";
        }

        var members = OwnBlock.Of(tree, owner).Members;
        members = change.OfRefit ? members.OfType<RefitPropertySyntax>().FirstOrDefault()?.Properties.CastArray<SyntaxNode>() ?? [] : members;
        return Existing(members, change) is null
            && members.OfType<WhenSyntax>().SelectMany(branch => branch.DescendantsAndSelf()).OfType<PropertySyntax>().Any(property => property.Keyword.Text == change.Keyword)
                ? $"its `{change.Keyword}` stands under `when`"
                : null;
    }

    /// <summary>The edits, in the order of the text. None of the changes has an obstacle.</summary>
    public static ImmutableArray<TextEdit> Of(SyntaxTree tree, IEnumerable<PropertyChange> changes) =>
    [
        .. from block in changes.GroupBy(change => change.Owner.Span)
           let owner = OwnerOf(tree, block.Key)
           where owner is not null
           from edit in Write(tree, owner, [.. block.Where(change => !change.OfRefit)], [.. block.Where(change => change.OfRefit)])
           // Where two blocks end at one place, the inner one ends first.
           orderby edit.Place.Span.Start, edit.Place.Span.Length, owner.Span.Start descending
           select edit,
    ];

    private static SyntaxNode? OwnerOf(SyntaxTree tree, TextSpan at) => tree.Root.DescendantsAndSelf().FirstOrDefault(node => node switch
    {
        ActionSyntax or TextActionSyntax or CheckRuleSyntax => node.Span == at,
        JointSyntax joint => joint.Name.Span.Start == at.Start,
        CoverSyntax cover => cover.Name.Span.Start == at.Start,
        PartSyntax part => part.Name.Span.Start == at.Start,
        EnergySyntax energy => energy.Name.Span.Start == at.Start,
        FluidSyntax fluid => fluid.Name.Span.Start == at.Start,
        ControlSyntax control => control.Name.Span.Start == at.Start,
        CatalogSyntax or ProcedureSyntax => ((DeclarationSyntax)node).Name.Span.Start == at.Start,
        _ => false,
    });

    private static IEnumerable<TextEdit> Write(SyntaxTree tree, SyntaxNode owner, ImmutableArray<PropertyChange> own, ImmutableArray<PropertyChange> ofRefit)
    {
        var block = OwnBlock.Of(tree, owner);
        var fresh = new List<string>();
        foreach (var change in own)
        {
            if (Existing(block.Members, change) is { } property)
            {
                yield return Replacing(tree, property, change);
            }
            else if (change.Keyword == How && block.Members.OfType<TextPropertySyntax>().LastOrDefault(one => one.Keyword.Text == How) is { } last)
            {
                yield return Behind(tree, last, change.Words);
            }
            else
            {
                fresh.Add(change.Words);
            }
        }

        var inverse = block.Members.OfType<RefitPropertySyntax>().FirstOrDefault();
        if (inverse is not null && !ofRefit.IsEmpty)
        {
            foreach (var edit in Write(tree, inverse, ofRefit, []))
            {
                yield return edit;
            }
        }

        var refit = inverse is null && !ofRefit.IsEmpty ? $"{Refit} {{ {string.Join("  ", ofRefit.Select(change => change.Words))} }}" : "";
        foreach (var edit in Put(tree, owner, block, fresh, refit))
        {
            yield return edit;
        }
    }

    /// <summary>New properties go before all others, a new <c>refit { … }</c> behind them.</summary>
    private static IEnumerable<TextEdit> Put(SyntaxTree tree, SyntaxNode owner, OwnBlock block, List<string> fresh, string refit)
    {
        var all = string.Join("  ", refit.Length > 0 ? fresh.Append(refit) : fresh);
        switch (block)
        {
            case var _ when all.Length == 0:
                break;
            case { Open: { } open, Members: [] }:
                yield return At(tree, open + 1, $" {all} ");
                break;
            case { Open: not null } when owner is ProcedureSyntax && block.Members.OfType<GoalSyntax>().LastOrDefault() is { } goal:
                yield return Behind(tree, goal, fresh);
                break;
            case { Open: not null, Members: [var first, ..] }:
                if (fresh.Count > 0)
                {
                    var gap = StepEdits.Gap(tree.Text, first.Span.Start);
                    yield return At(tree, first.Span.Start, string.Concat(fresh.Select(words => words + gap)));
                }

                if (refit.Length > 0)
                {
                    yield return Behind(tree, block.Members[^1], refit);
                }

                break;
            case { EndsWithCover: true, Members: [var first, ..] }:
                // What follows a cover on the line belongs to the cover: the joint gets a block around it.
                yield return At(tree, first.Span.Start, $"{{ {all}  ");
                yield return At(tree, owner.Span.End, " }");
                break;
            default:
                yield return At(tree, owner.Span.End, $" {{ {all} }}");
                break;
        }
    }

    /// <summary>What stands there of that name and may stand once, or lists what is added.</summary>
    private static PropertySyntax? Existing(ImmutableArray<SyntaxNode> members, PropertyChange change) =>
        members.OfType<PropertySyntax>().FirstOrDefault(property => property.Keyword.Text == change.Keyword && property is QuantityPropertySyntax or NamesPropertySyntax);

    private static TextEdit Replacing(SyntaxTree tree, PropertySyntax property, PropertyChange change) => property switch
    {
        QuantityPropertySyntax { Quantity: var quantity } => new TextEdit(new SourceSpan(tree.Text.Path, quantity.Span), change.Value),
        NamesPropertySyntax { Names: [.., var last] names } when change.Keyword == Tool => At(tree, last.Span.End, Missing(names, change)),
        _ => Behind(tree, property, change.Words),
    };

    /// <summary>The names that a list lacks, each behind a comma.</summary>
    private static string Missing(ImmutableArray<ReferenceSyntax> names, PropertyChange change) =>
        string.Concat(change.Value.Split(", ").Except(names.Select(name => name.Written)).Select(name => $", {name}"));

    private static TextEdit Behind(SyntaxTree tree, SyntaxNode node, string words) => Behind(tree, node, [words]);

    private static TextEdit Behind(SyntaxTree tree, SyntaxNode node, IReadOnlyCollection<string> words)
    {
        var gap = StepEdits.Gap(tree.Text, node.Span.Start);
        return At(tree, node.Span.End, string.Concat(words.Select(one => gap + one)));
    }

    private static TextEdit At(SyntaxTree tree, int position, string text) => new(new SourceSpan(tree.Text.Path, new TextSpan(position, 0)), text);

    /// <summary>The block of something, as it stands.</summary>
    /// <param name="Open">Where its brace is; null where it has no block.</param>
    /// <param name="Members">What stands in it; where there is no block, what follows on the line.</param>
    /// <param name="EndsWithCover">Whether, without a block, a cover comes last.</param>
    private sealed record OwnBlock(int? Open, ImmutableArray<SyntaxNode> Members, bool EndsWithCover)
    {
        public static OwnBlock Of(SyntaxTree tree, SyntaxNode owner)
        {
            var members = MembersOf(owner);
            if (members.Any(member => member.Span.End == owner.Span.End) || Brace(tree, owner) is not { } open)
            {
                return new OwnBlock(null, members, members is [.., CoverSyntax]);
            }

            return new OwnBlock(open, [.. members.Where(member => member.Span.Start > open)], false);
        }

        private static ImmutableArray<SyntaxNode> MembersOf(SyntaxNode owner) => owner switch
        {
            ActionSyntax action => action.Properties.CastArray<SyntaxNode>(),
            TextActionSyntax action => action.Properties.CastArray<SyntaxNode>(),
            CheckRuleSyntax rule => rule.Properties.CastArray<SyntaxNode>(),
            RefitPropertySyntax refit => refit.Properties.CastArray<SyntaxNode>(),
            JointSyntax joint => joint.Clauses.CastArray<SyntaxNode>(),
            CoverSyntax cover => cover.Clauses.CastArray<SyntaxNode>(),
            PartSyntax part => part.Members.CastArray<SyntaxNode>(),
            EnergySyntax energy => energy.Properties.CastArray<SyntaxNode>(),
            FluidSyntax fluid => fluid.Properties.CastArray<SyntaxNode>(),
            ControlSyntax control => control.Properties.CastArray<SyntaxNode>(),
            CatalogSyntax entry => entry.Properties.CastArray<SyntaxNode>(),
            ProcedureSyntax procedure => procedure.Items,
            _ => [],
        };

        /// <summary>Where the brace is whose other one ends it.</summary>
        private static int? Brace(SyntaxTree tree, SyntaxNode owner)
        {
            var open = new Stack<int>();
            foreach (var token in tree.TokensFrom(owner.Span.Start).TakeWhile(token => token.Span.Start < owner.Span.End))
            {
                if (token.Span.Length == 1 && tree.Text.Content[token.Span.Start] is '{')
                {
                    open.Push(token.Span.Start);
                }
                else if (token.Span.Length == 1 && tree.Text.Content[token.Span.Start] is '}' && open.TryPop(out var start) && token.Span.End == owner.Span.End)
                {
                    return start;
                }
            }

            return null;
        }
    }
}
