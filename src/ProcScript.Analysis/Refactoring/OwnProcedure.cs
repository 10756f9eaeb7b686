using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>
/// Makes a procedure of the first steps of a strip, called with <c>do</c>. Steps further on lean on those before them, and could not be done
/// alone.
/// </summary>
/// <param name="report">The report.</param>
internal sealed class OwnProcedure(LibraryReport report)
{
    private readonly StepTitles _titles = new(report);

    /// <summary>The refactoring; null where the new procedure could not be done by itself, or the old one no more.</summary>
    public Refactoring? For(SelectedSteps steps, Soundness soundness)
    {
        var procedure = steps.Procedure;
        if (steps.Block is not StageSyntax stage || steps.Before.Length > 0 || steps.Steps.Any(step => step is DoSyntax)
            || procedure.Items.FirstOrDefault(item => item is StageSyntax or DoSyntax or EachSyntax or WhenSyntax) != stage
            || StepTitles.Removed(steps) is not { } removed)
        {
            return null;
        }

        var text = steps.Tree.Text;
        var name = Free($"{removed.Name.Text}_off");
        ParameterSyntax[] used = [.. procedure.Parameters.Where(parameter => steps.References.SelectMany(reference => reference.Indices).Any(index => index.Text == parameter.Name.Text))];
        var parameters = used.Length == 0 ? "" : $"({string.Join(", ", used.Select(parameter => text.Slice(parameter.Span)))})";
        var arguments = used.Length == 0 ? "" : $"({string.Join(", ", used.Select(parameter => parameter.Name.Text))})";
        var variants = string.Concat(procedure.Variants.Select(variant => " " + text.Slice(variant.Span)));
        var newLine = EditedFile.NewLine(text);
        var title = used.Length == 0 ? $"Take the {_titles.TitleOf(removed)} off" : $"Take the {string.Join(' ', used.Select(one => $"{{{one.Name.Text}}}"))} {removed.Name.Text.Replace('_', ' ')} off";
        string[] lines =
        [
            $"procedure {name}{parameters} {TextQuotes.Quoted(title)} on {procedure.Machine.Text}{variants} {{",
            $"goal remove {removed.Written}",
            $"stage {(steps.Behind.Length == 0 ? text.Slice(stage.Title.Span) : _titles.Stage(steps))} {{",
            steps.Text,
            "}",
            "}",
            "",
            "",
        ];
        var start = SelectedSteps.WithComments(text, procedure.Span.Start);
        var call = $"do {name}{arguments}";
        var rest = steps.Behind.Length == 0 ? (stage.Span, call) : (steps.Span, call);
        var edited = text.Content[..start] + string.Join(newLine, lines) + text.Content[start..rest.Item1.Start] + rest.call + text.Content[rest.Item1.End..];
        return EditedFile.LaidOut(steps.Tree, edited) is { } laidOut && soundness.IsProven && soundness.Keeps(laidOut)
            ? new Refactoring($"Make a procedure of the steps: `{name}`", RefactoringSort.Extract, [EditedFile.Difference(text, laidOut)])
            : null;
    }

    private string Free(string name)
    {
        var taken = report.Library.Trees.Values.SelectMany(tree => tree.Root.Declarations).Select(declaration => declaration.Name.Text).ToHashSet(StringComparer.Ordinal);
        var free = name;
        for (var number = 2; taken.Contains(free); number++)
        {
            free = $"{name}_{number}";
        }

        return free;
    }
}
