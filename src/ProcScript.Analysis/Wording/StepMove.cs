using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>
/// The edit that moves a step to another place of its file. It is offered only where the step stands for itself: in no loop, in no called
/// procedure, and without an alert before it that would be left behind.
/// </summary>
internal static class StepMove
{
    /// <summary>Moves a step to right before another.</summary>
    public static IEnumerable<Fix> Before(StripRun run, Step step, Step other) =>
        Text(run, step, other) is { } tree ? [Move(tree, step, other, other.Source.Span.Start, gap => (Slice(tree, step), gap))] : [];

    /// <summary>Moves a step to right after another.</summary>
    public static IEnumerable<Fix> After(StripRun run, Step step, Step other) =>
        Text(run, step, other) is { } tree ? [Move(tree, step, other, other.Source.Span.End, gap => (gap, Slice(tree, step)))] : [];

    private static Fix Move(SourceText text, Step step, Step other, int at, Func<string, (string First, string Second)> put)
    {
        var (first, second) = put(StepEdits.Gap(text, other.Source.Span.Start));
        var place = at == other.Source.Span.Start ? "before" : "after";
        return new Fix(
            $"Move `{Slice(text, step)}` to {place} `{Slice(text, other)}`",
            FixGrade.NeedsLook,
            [
                new TextEdit(new SourceSpan(text.Path, new TextSpan(at, 0)), first + second),
                new TextEdit(new SourceSpan(text.Path, StepEdits.WholeLines(text, step.Source.Span)), ""),
            ]);
    }

    private static string Slice(SourceText text, Step step) => text.Slice(step.Source.Span);

    /// <summary>The text that holds both; null where one of them stands for more than itself.</summary>
    private static SourceText? Text(StripRun run, Step step, Step other) =>
        step.Source.Path == other.Source.Path
        && run.Library.Around(step.Source) is { } tree
        && Alone(step, tree.Text)
        && Alone(other, tree.Text)
        && tree.Text.LineAt(step.Source.Span.Start) == tree.Text.LineAt(step.Source.Span.End)
            ? tree.Text
            : null;

    private static bool Alone(Step step, SourceText text) =>
        step.Calls.IsEmpty && step.Alerts.IsEmpty && step.Target is { } target && text.Slice(step.TargetSpan.Span) == target.Name;
}
