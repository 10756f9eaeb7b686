using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>Edits of a procedure: a line more, a line less, another verb. All want a look, for the step may stand in a loop.</summary>
internal static class StepEdits
{
    /// <summary>Puts actions on lines of their own right before a step; nothing where the step's text cannot say them.</summary>
    public static IEnumerable<Fix> InsertBefore(StripRun run, Step step, IEnumerable<NamedAction> actions, string ending = "")
    {
        if (run.Library.Around(step.Source) is not { } tree)
        {
            yield break;
        }

        var lines = new List<string>();
        foreach (var action in actions)
        {
            if (AsWritten(action.Target!.Name, step, tree.Text) is not { } name)
            {
                yield break;
            }

            lines.Add($"{ActionTable.Row(action.Verb).Word} {name}{ending}");
        }

        var at = Beginning(step);
        var gap = Gap(tree.Text, at);
        yield return new Fix(
            $"Insert {ItemPhrases.List(lines.Select(line => $"`{line}`"))}",
            FixGrade.NeedsLook,
            [new TextEdit(new SourceSpan(step.Source.Path, new TextSpan(at, 0)), string.Concat(lines.Select(line => line + gap)))]);
    }

    /// <summary>
    /// Has a new one go back: puts <c>replace</c> before the first step of the work, or behind the last step of the strip where there is
    /// no work. Nothing where the text that holds those steps is not the procedure's own.
    /// </summary>
    public static IEnumerable<Fix> Replace(StripRun run, MachineItem item)
    {
        var action = new NamedAction(Verb.Replace, item);
        var procedure = run.Procedure;
        if (procedure.Work is [{ Calls.IsEmpty: true } first, ..])
        {
            return InsertBefore(run, first, [action]);
        }

        return procedure is { Work.IsEmpty: true, Stages: [.., { Steps: [.., { Calls.IsEmpty: true } last] }] } && last.Target is not null
            ? InsertBehind(run, last, action)
            : [];
    }

    /// <summary>Writes another verb.</summary>
    public static Fix ReplaceVerb(SourceSpan verb, Verb by) => new(
        $"Write `{ActionTable.Row(by).Word}`",
        FixGrade.NeedsLook,
        [new TextEdit(verb, ActionTable.Row(by).Word)]);

    /// <summary>Takes a step out, with its line where it stands alone on one; nothing where other passes of a loop may need it.</summary>
    public static IEnumerable<Fix> Delete(StripRun run, Step step)
    {
        if (!step.Calls.IsEmpty
            || run.Library.Around(step.Source) is not { } tree
            || step.Target is not { } target
            || tree.Text.Slice(step.TargetSpan.Span) != target.Name)
        {
            yield break;
        }

        yield return new Fix(
            "Take the step out",
            FixGrade.NeedsLook,
            [new TextEdit(new SourceSpan(step.Source.Path, WholeLines(tree.Text, step.Source.Span)), "")]);
    }

    /// <summary>Takes a refit rule out, with its line where it stands alone on one.</summary>
    public static IEnumerable<Fix> Delete(StripRun run, OrderRule rule)
    {
        if (run.Library.Around(rule.Source) is { } tree)
        {
            yield return new Fix(
                "Take the rule out",
                FixGrade.NeedsLook,
                [new TextEdit(new SourceSpan(rule.Source.Path, WholeLines(tree.Text, rule.Source.Span)), "")]);
        }
    }

    private static IEnumerable<Fix> InsertBehind(StripRun run, Step step, NamedAction action)
    {
        if (run.Library.Around(step.Source) is { } tree && AsWritten(action.Target!.Name, step, tree.Text) is { } name)
        {
            var line = $"{ActionTable.Row(action.Verb).Word} {name}";
            var end = new SourceSpan(step.Source.Path, new TextSpan(step.Source.Span.End, 0));
            yield return new Fix(
                $"Insert `{line}`",
                FixGrade.NeedsLook,
                [new TextEdit(end, Gap(tree.Text, step.Source.Span.Start) + line)]);
        }
    }

    /// <summary>Where a step begins: at the first of the alerts before it, which bind to whatever comes next.</summary>
    internal static int Beginning(Step step) => step.Alerts
        .Where(alert => alert.Source.Path == step.Source.Path && alert.Source.Span.Start < step.Source.Span.Start)
        .Select(alert => alert.Source.Span.Start)
        .Append(step.Source.Span.Start)
        .Min();

    /// <summary>What stands between an inserted action and the step: a line break with the step's indentation, or a blank.</summary>
    internal static string Gap(SourceText text, int at)
    {
        var line = text.LineSpan(text.LineAt(at));
        var before = text.Content[line.Start..at];
        if (!string.IsNullOrWhiteSpace(before))
        {
            return "  ";
        }

        return line.End < text.Content.Length && text.Content[line.End] == '\r' ? $"\r\n{before}" : $"\n{before}";
    }

    /// <summary>A stretch with its lines where it stands alone on them.</summary>
    internal static TextSpan WholeLines(SourceText text, TextSpan span)
    {
        var (first, last) = (text.LineAt(span.Start), text.LineAt(span.End));
        var lines = text.LineSpan(first).Cover(text.LineSpan(last));
        var alone = string.IsNullOrWhiteSpace(text.Content[lines.Start..span.Start])
            && string.IsNullOrWhiteSpace(text.Content[span.End..lines.End]);
        return !alone || last + 1 == text.LineCount
            ? span
            : TextSpan.FromBounds(lines.Start, text.LineSpan(last + 1).Start);
    }

    /// <summary>
    /// The name as the step's text can say it: where the step names its target by variables, the same variables stand for the same
    /// values. Null where a loop would say the name more than once.
    /// </summary>
    internal static string? AsWritten(string name, Step step, SourceText text)
    {
        var written = text.Slice(step.TargetSpan.Span);
        if (step.Target is not { } target || written == target.Name)
        {
            return name;
        }

        var (variables, values) = (CanonicalName.Indices(written), CanonicalName.Indices(target.Name));
        var indices = CanonicalName.Indices(name);
        if (variables.Length != values.Length)
        {
            return null;
        }

        var renamed = indices.Select(index => Array.IndexOf(values, index) is >= 0 and var at ? variables[at] : index).ToArray();
        return renamed.SequenceEqual(indices) ? null : CanonicalName.Written(CanonicalName.Base(name), renamed);
    }
}
