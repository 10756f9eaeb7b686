using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>Edits that have a procedure do what it is for.</summary>
internal static class GoalEdits
{
    private const string Goal = "goal";

    /// <summary>Writes what a goal says: first in the work, which is put in where there is none, or last in the last stage.</summary>
    public static IEnumerable<Fix> Meet(StripRun run, Goal goal)
    {
        var path = run.Procedure.Declared.Path;
        if (goal.Source.Path != path
            || run.Library.Around(run.Procedure.Declared) is not { } tree
            || tree.Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(one => one.Name.Span == run.Procedure.Declared.Span) is not { } procedure
            || tree.Text.Quote(goal.Source.Span) is not { Length: > 4 } written)
        {
            yield break;
        }

        var step = written[Goal.Length..].TrimStart();
        var edit = ActionTable.Row(goal.Verb).Phase == ActionPhase.Work ? InWork(tree.Text, procedure, step) : InStage(tree.Text, procedure, step);
        if (edit is { } found)
        {
            yield return new Fix($"Insert `{step}`", FixGrade.NeedsLook, [new TextEdit(new SourceSpan(path, new TextSpan(found.At, 0)), found.Words)]);
        }
    }

    private static (int At, string Words)? InWork(SourceText text, ProcedureSyntax procedure, string step)
    {
        if (procedure.Items.OfType<WorkSyntax>().FirstOrDefault() is { } work)
        {
            return work.Steps is [var first, ..]
                ? (first.Span.Start, step + StepEdits.Gap(text, first.Span.Start))
                : (work.Span.End - 1, text.Content[work.Span.End - 2] == ' ' ? step + " " : $" {step} ");
        }

        return procedure.Items.LastOrDefault(item => item is StageSyntax or DoSyntax or EachSyntax or WhenSyntax) is { } last
            ? (last.Span.End, $"{StepEdits.Gap(text, last.Span.Start)}work {{ {step} }}")
            : null;
    }

    private static (int At, string Words)? InStage(SourceText text, ProcedureSyntax procedure, string step) =>
        procedure.Items.OfType<StageSyntax>().LastOrDefault() is { Steps: [.., var last] } ? (last.Span.End, StepEdits.Gap(text, last.Span.Start) + step) : null;
}
