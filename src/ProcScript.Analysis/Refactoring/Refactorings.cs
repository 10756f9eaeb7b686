using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>The other ways to write what somebody has selected. Each leaves texts without an error, laid out as they were.</summary>
public static class Refactorings
{
    /// <summary>The refactorings of a stretch of a file: of selected steps, or of the stage, the joint or the name that is there.</summary>
    /// <param name="report">What a check of the library came to.</param>
    /// <param name="path">The file.</param>
    /// <param name="selection">What is selected; empty for a mere place.</param>
    /// <param name="cancellation">Ends the work.</param>
    public static IEnumerable<Refactoring> For(LibraryReport report, string path, TextSpan selection, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (!report.Library.Trees.TryGetValue(path, out var tree) || !tree.Findings.IsEmpty)
        {
            yield break;
        }

        foreach (var move in new StageMoves(report).At(tree, selection))
        {
            yield return move;
        }

        foreach (var cover in new CoverJoint(report, cancellation).At(tree, selection))
        {
            yield return cover;
        }

        if (new HouseNames(report, cancellation).At(tree, selection) is { } renamed)
        {
            yield return renamed;
        }

        if (selection.Length == 0 || SelectedSteps.At(tree, selection) is not { } steps)
        {
            yield break;
        }

        foreach (var change in new StepBlocks(report).For(steps))
        {
            yield return change;
        }

        Soundness soundness = new(report, steps, cancellation);
        foreach (var change in new StepSides(report).For(steps).Where(soundness.Keeps))
        {
            yield return change;
        }

        if (new OwnProcedure(report).For(steps, soundness) is { } procedure)
        {
            yield return procedure;
        }
    }
}
