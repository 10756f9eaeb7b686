using ProcScript.Analysis.Drafting;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>What some steps may be called.</summary>
/// <param name="report">The report, for the titles of parts.</param>
internal sealed class StepTitles(LibraryReport report)
{
    /// <summary>The last part that the steps take off; null where they take none.</summary>
    public static ReferenceSyntax? Removed(SelectedSteps steps) => steps.Steps
        .SelectMany(step => step.DescendantsAndSelf())
        .OfType<ActionSyntax>()
        .LastOrDefault(action => action.Verb.Text is "remove" or "strip")?.Target;

    /// <summary>What people call an item: its title, without variables, or its name in words.</summary>
    public string TitleOf(ReferenceSyntax item)
    {
        var name = CanonicalName.Of(item.Name.Text, item.Indices.Select(index => index.Text));
        var title = report.Procedures
            .Select(one => one.Procedure.Machine.Items.GetValueOrDefault(name)?.Title)
            .FirstOrDefault(found => found is not null);
        return title ?? string.Join(' ', item.Indices.Select(index => index.Text).Append(item.Name.Text.Replace('_', ' ')));
    }

    /// <summary>The title of a stage that some steps make up, in quotes.</summary>
    public string Stage(SelectedSteps steps)
    {
        var removed = Removed(steps);
        var title = removed is null || removed.Indices.Any(index => IsVariable(index, steps))
            ? removed is null ? Without(steps) : DraftWords.Capital(removed.Name.Text.Replace('_', ' '))
            : DraftWords.Capital(TitleOf(removed));
        return TextQuotes.Quoted(title);
    }

    private static string Without(SelectedSteps steps) =>
        steps.Steps.SelectMany(step => step.DescendantsAndSelf()).OfType<ActionSyntax>().Any(action => action.Verb.Text == "isolate") ? "Make safe" : "Prepare";

    private static bool IsVariable(WordSyntax index, SelectedSteps steps) =>
        steps.Procedure.Parameters.Any(one => one.Name.Text == index.Text)
        || steps.Procedure.DescendantsAndSelf().OfType<EachSyntax>().Any(each => each.Variable.Text == index.Text);
}
