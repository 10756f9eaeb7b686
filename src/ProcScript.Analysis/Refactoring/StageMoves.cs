using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Has a stage change places with the one before or behind it, where the work can be done in that order.</summary>
/// <param name="report">The report.</param>
internal sealed class StageMoves(LibraryReport report)
{
    /// <summary>The moves of the stage whose head is at a place.</summary>
    public IEnumerable<Refactoring> At(SyntaxTree tree, TextSpan place)
    {
        foreach (var procedure in tree.Root.Declarations.OfType<ProcedureSyntax>().Where(one => one.Span.Touches(place.Start)))
        {
            var own = report.Procedures.Where(one => one.Procedure.IsOf(tree.Text.Path, procedure)).ToList();
            if (own.Count == 0 || !own.TrueForAll(one => one.IsProven))
            {
                continue;
            }

            for (var i = 0; i < procedure.Items.Length; i++)
            {
                if (procedure.Items[i] is not StageSyntax stage || place.Start < stage.Span.Start || place.End > stage.Title.Span.End)
                {
                    continue;
                }

                if (i > 0 && procedure.Items[i - 1] is StageSyntax before && MayChangePlaces(own, tree, before, stage) && Swap(tree, before, stage) is { } up)
                {
                    yield return new Refactoring($"Move the stage {Named(stage)} up", RefactoringSort.Rewrite, up);
                }

                if (i + 1 < procedure.Items.Length && procedure.Items[i + 1] is StageSyntax behind && MayChangePlaces(own, tree, stage, behind) && Swap(tree, stage, behind) is { } down)
                {
                    yield return new Refactoring($"Move the stage {Named(stage)} down", RefactoringSort.Rewrite, down);
                }
            }
        }
    }

    private static string Named(StageSyntax stage) => $"\"{stage.Title.Value}\"";

    /// <summary>Whether nothing in the first stage has to go before anything in the second, in any variant.</summary>
    private static bool MayChangePlaces(List<ProcedureReport> own, SyntaxTree tree, StageSyntax first, StageSyntax second) =>
        own.TrueForAll(one => one.Outcome.Strip is { } run && Numbers(run, tree, first) is var earlier && Numbers(run, tree, second) is var later
            && !run.Order.Any(edge => earlier.Contains(edge.Earlier) && later.Contains(edge.Later)));

    private static HashSet<int> Numbers(StripRun run, SyntaxTree tree, StageSyntax stage) => run.Stages
        .Where(one => one.Stage.Source.Path == tree.Text.Path && one.Stage.Source.Span.Start >= stage.Span.Start && one.Stage.Source.Span.End <= stage.Span.End)
        .SelectMany(one => one.Actions)
        .Select(action => action.Number)
        .ToHashSet();

    private static ImmutableArray<TextEdit>? Swap(SyntaxTree tree, StageSyntax first, StageSyntax second)
    {
        var (one, other) = (Stretch(tree.Text, first), Stretch(tree.Text, second));
        var between = tree.Text.Slice(TextSpan.FromBounds(one.End, other.Start));
        return EditedFile.Replace(tree, one.Cover(other), tree.Text.Slice(other) + between + tree.Text.Slice(one));
    }

    private static TextSpan Stretch(SourceText text, StageSyntax stage) => TextSpan.FromBounds(SelectedSteps.WithComments(text, stage.Span.Start), stage.Span.End);
}
