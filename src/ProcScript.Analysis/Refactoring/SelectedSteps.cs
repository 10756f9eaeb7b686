using System.Collections.Immutable;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Steps in a row that somebody has selected, in the block that they stand in.</summary>
/// <param name="Tree">Their file.</param>
/// <param name="Procedure">Their procedure.</param>
/// <param name="Block">The stage, the work, the loop or the branch.</param>
/// <param name="Body">All that stands in it.</param>
/// <param name="First">The first step that is selected, of all.</param>
/// <param name="Last">The last one.</param>
internal sealed record SelectedSteps(SyntaxTree Tree, ProcedureSyntax Procedure, SyntaxNode Block, ImmutableArray<SyntaxNode> Body, int First, int Last)
{
    /// <summary>The steps.</summary>
    public ImmutableArray<SyntaxNode> Steps => Body[First..(Last + 1)];

    /// <summary>From the comments before the first step to the end of the last.</summary>
    public TextSpan Span => TextSpan.FromBounds(WithComments(Tree.Text, Body[First].Span.Start), Body[Last].Span.End);

    /// <summary>What is selected, as it is written.</summary>
    public string Text => Tree.Text.Slice(Span);

    /// <summary>The names that the steps speak of.</summary>
    public IEnumerable<ReferenceSyntax> References => Steps.SelectMany(step => step.DescendantsAndSelf()).OfType<ReferenceSyntax>();

    /// <summary>What of the block stands before them.</summary>
    public string Before => Tree.Text.Slice(TextSpan.FromBounds(Inside.Start, Span.Start)).Trim();

    /// <summary>What of the block stands behind them.</summary>
    public string Behind => Tree.Text.Slice(TextSpan.FromBounds(Span.End, Inside.End)).Trim();

    private TextSpan Inside => TextSpan.FromBounds(Tree.Text.Content.IndexOf('{', HeadEnd) + 1, Block.Span.End - 1);

    private int HeadEnd => Block switch
    {
        StageSyntax stage => stage.Title.Span.End,
        EachSyntax each => each.Values.Span.End,
        WhenSyntax branch => branch.Test.Span.End,
        _ => Block.Span.Start,
    };

    /// <summary>The steps that a stretch touches; null where it touches none, or more than those of one block.</summary>
    public static SelectedSteps? At(SyntaxTree tree, TextSpan selection)
    {
        if (tree.Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(one => Holds(one.Span, selection)) is not { } procedure)
        {
            return null;
        }

        foreach (var block in procedure.DescendantsAndSelf().Where(node => Holds(node.Span, selection)).Reverse())
        {
            var body = BodyOf(block);
            if (body.IsEmpty || body.Any(node => node is StageSyntax or WorkSyntax or RefitSyntax or GoalSyntax or OrderRuleSyntax or CheckRuleSyntax) || IsInRefit(procedure, block))
            {
                continue;
            }

            var touched = Enumerable.Range(0, body.Length).Where(i => body[i].Span.Start < selection.End && body[i].Span.End > selection.Start).ToList();
            return touched.Count == 0 ? null : new SelectedSteps(tree, procedure, block, body, WithAlerts(body, touched[0]), BehindAlerts(body, touched[^1]));
        }

        return null;
    }

    /// <summary>What stands in a block of steps; nothing in any other node.</summary>
    public static ImmutableArray<SyntaxNode> BodyOf(SyntaxNode block) => block switch
    {
        StageSyntax stage => stage.Steps,
        WorkSyntax work => work.Steps,
        EachSyntax each => each.Body,
        WhenSyntax branch => branch.Body,
        _ => [],
    };

    /// <summary>Where the comments right before a place begin, those on lines of their own.</summary>
    public static int WithComments(SourceText text, int start)
    {
        var line = text.LineAt(start);
        if (!string.IsNullOrWhiteSpace(text.Content[text.LineSpan(line).Start..start]))
        {
            return start;
        }

        while (line > 0 && text.Slice(text.LineSpan(line - 1)).TrimStart().StartsWith("//", StringComparison.Ordinal))
        {
            line--;
            var span = text.LineSpan(line);
            start = span.Start + (span.Length - text.Slice(span).TrimStart().Length);
        }

        return start;
    }

    private static bool IsInRefit(ProcedureSyntax procedure, SyntaxNode block) => procedure.DescendantsAndSelf().OfType<RefitSyntax>().Any(refit => Holds(refit.Span, block.Span));

    // Alerts belong to the step behind them.
    private static int WithAlerts(ImmutableArray<SyntaxNode> body, int first)
    {
        while (first > 0 && body[first - 1] is AlertSyntax)
        {
            first--;
        }

        return first;
    }

    private static int BehindAlerts(ImmutableArray<SyntaxNode> body, int last)
    {
        while (last + 1 < body.Length && body[last] is AlertSyntax)
        {
            last++;
        }

        return last;
    }

    private static bool Holds(TextSpan outer, TextSpan inner) => outer.Start <= inner.Start && inner.End <= outer.End;
}
