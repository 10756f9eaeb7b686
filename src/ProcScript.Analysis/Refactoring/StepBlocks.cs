using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Puts selected steps into a block: a stage of their own, a branch.</summary>
/// <param name="report">The report.</param>
internal sealed class StepBlocks(LibraryReport report)
{
    /// <summary>How many options and values a branch is offered for.</summary>
    private const int MostTests = 4;

    private readonly StepTitles _titles = new(report);

    /// <summary>The refactorings of some steps.</summary>
    public IEnumerable<Refactoring> For(SelectedSteps steps) => [.. OwnStage(steps), .. Branches(steps)];

    private IEnumerable<Refactoring> OwnStage(SelectedSteps steps)
    {
        if (steps.Block is not StageSyntax stage || steps.Steps.Length == steps.Body.Length)
        {
            yield break;
        }

        var newLine = EditedFile.NewLine(steps.Tree.Text);
        var title = steps.Tree.Text.Slice(stage.Title.Span);
        var own = _titles.Stage(steps);
        string[] stages =
        [
            .. steps.Before.Length > 0 ? [Stage(title, steps.Before)] : Array.Empty<string>(),
            Stage(own, steps.Text),
            .. steps.Behind.Length > 0 ? [Stage(steps.Before.Length > 0 ? title[..^1] + ", the rest\"" : title, steps.Behind)] : Array.Empty<string>(),
        ];
        if (EditedFile.Replace(steps.Tree, stage.Span, string.Join(newLine, stages)) is { } edits)
        {
            yield return new Refactoring($"Make a stage of the steps: {own}", RefactoringSort.Extract, edits);
        }

        string Stage(string name, string body) => $"stage {name} {{{newLine}{body}{newLine}}}";
    }

    private IEnumerable<Refactoring> Branches(SelectedSteps steps)
    {
        var machine = report.Procedures.FirstOrDefault(one => one.Procedure.IsOf(steps.Tree.Text.Path, steps.Procedure))?.Procedure.Machine;
        var options = machine?.Options.Select(option => option.Name) ?? [];
        var variables = Around(steps).Where(variable => variable.Values.Values.Length > 1).Select(variable => $"{variable.Name.Text} is {variable.Values.Values[0].Text}");
        var newLine = EditedFile.NewLine(steps.Tree.Text);
        foreach (var test in variables.Concat(options).Take(MostTests))
        {
            if (EditedFile.Replace(steps.Tree, steps.Span, $"when {test} {{{newLine}{steps.Text}{newLine}}}") is { } edits)
            {
                yield return new Refactoring($"Wrap the steps in `when {test}`", RefactoringSort.Rewrite, edits);
            }
        }
    }

    /// <summary>The variables that steps can ask for: those of the loops around them, the inner first, and the parameters.</summary>
    private static IEnumerable<(WordSyntax Name, ValuesSyntax Values)> Around(SelectedSteps steps) => steps.Procedure.DescendantsAndSelf()
        .OfType<EachSyntax>()
        .Where(each => each.Span.Start <= steps.Span.Start && steps.Span.End <= each.Span.End)
        .Reverse()
        .Select(each => (each.Variable, each.Values))
        .Concat(steps.Procedure.Parameters.Select(parameter => (parameter.Name, parameter.Values)));
}
