using System.Collections.Immutable;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Writes steps of one side for the others too: once more for each, or in a loop; and makes a loop of what is written for each.</summary>
/// <param name="report">The report.</param>
internal sealed class StepSides(LibraryReport report)
{
    /// <summary>The refactorings of some steps.</summary>
    public IEnumerable<Refactoring> For(SelectedSteps steps) => Repeated(steps) is { } loop ? [loop] : Others(steps);

    /// <summary>The same steps for the other sides, and the loop for all.</summary>
    private IEnumerable<Refactoring> Others(SelectedSteps steps)
    {
        string[] values = [.. steps.References.SelectMany(reference => reference.Indices).Select(index => index.Text).Distinct(StringComparer.Ordinal)];
        if (values is not [var value] || Sides(steps, value) is not { Length: > 1 } sides || sides.IndexOf(value) < 0)
        {
            yield break;
        }

        var newLine = EditedFile.NewLine(steps.Tree.Text);
        string[] others = [.. sides.Where(side => side != value)];
        var more = string.Concat(others.Select(other => newLine + With(steps, value, other)));
        if (EditedFile.Replace(steps.Tree, steps.Span, steps.Text + more) is { } edits)
        {
            yield return new Refactoring($"Write the same for {string.Join(" and ", others.Select(other => $"`{other}`"))}", RefactoringSort.Rewrite, edits);
        }

        var variable = Variable(steps, sides);
        if (EditedFile.Replace(steps.Tree, steps.Span, $"each {variable} in {string.Join(", ", sides)} {{{newLine}{With(steps, value, variable)}{newLine}}}") is { } looped)
        {
            yield return new Refactoring($"Wrap the steps in `each {variable} in {string.Join(", ", sides)}`", RefactoringSort.Rewrite, looped);
        }
    }

    /// <summary>A loop for steps that are written once for each value, one group behind the other; null where they are not.</summary>
    private Refactoring? Repeated(SelectedSteps steps)
    {
        for (var size = 1; size <= steps.Steps.Length / 2; size++)
        {
            if (steps.Steps.Length % size != 0 || Groups(steps, size) is not { } groups)
            {
                continue;
            }

            var values = groups.Select(group => group.Value).ToImmutableArray();
            var variable = Variable(steps, values);
            var newLine = EditedFile.NewLine(steps.Tree.Text);
            var body = With(groups[0].Steps, values[0], variable);
            return EditedFile.Replace(steps.Tree, steps.Span, $"each {variable} in {string.Join(", ", values)} {{{newLine}{body}{newLine}}}") is { } edits
                ? new Refactoring($"Write the steps once, in `each {variable} in {string.Join(", ", values)}`", RefactoringSort.Rewrite, edits)
                : null;
        }

        return null;
    }

    private static List<(SelectedSteps Steps, string Value)>? Groups(SelectedSteps steps, int size)
    {
        List<(SelectedSteps Steps, string Value)> groups = [];
        for (var first = steps.First; first <= steps.Last; first += size)
        {
            var group = steps with { First = first, Last = first + size - 1 };
            string[] values = [.. group.References.SelectMany(reference => reference.Indices).Select(index => index.Text).Distinct(StringComparer.Ordinal)];
            if (values is not [var value] || groups.Exists(one => one.Value == value))
            {
                return null;
            }

            groups.Add((group, value));
        }

        // A comment that only one of them has would be lost, so nothing but the value may differ.
        var pattern = Pattern(groups[0]);
        return groups.TrueForAll(group => Pattern(group) == pattern) ? groups : null;

        static string Pattern((SelectedSteps Steps, string Value) group) => string.Join(' ', With(group.Steps, group.Value, "\0").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The values that everything has which the steps name with one of them, in the order of the machine.</summary>
    private ImmutableArray<string> Sides(SelectedSteps steps, string value)
    {
        var machine = report.Procedures.FirstOrDefault(one => one.Procedure.IsOf(steps.Tree.Text.Path, steps.Procedure))?.Procedure.Machine;
        string[] names = [.. steps.References.Where(reference => reference.Indices is [var index] && index.Text == value).Select(reference => reference.Name.Text).Distinct(StringComparer.Ordinal)];
        if (machine is null || names.Length == 0 || steps.References.Any(reference => reference.Indices.Length > 1))
        {
            return [];
        }

        var families = names.Select(name => machine.Items.Keys.Where(key => key.StartsWith(name + "[", StringComparison.Ordinal)).Select(key => key[(name.Length + 1)..^1]).ToList()).ToList();
        return [.. families[0].Where(side => families.TrueForAll(family => family.Contains(side)))];
    }

    /// <summary>What the machine calls the variable of such values.</summary>
    private string Variable(SelectedSteps steps, ImmutableArray<string> values) =>
        report.Library.Trees.Values
            .SelectMany(tree => tree.Root.Declarations)
            .OfType<MachineSyntax>()
            .Where(machine => machine.Name.Text == steps.Procedure.Machine.Text)
            .SelectMany(machine => machine.DescendantsAndSelf())
            .OfType<EachSyntax>()
            .FirstOrDefault(each => values.All(value => each.Values.Values.Any(listed => listed.Text == value)))?.Variable.Text
        ?? "side";

    /// <summary>The text of the steps with another index.</summary>
    private static string With(SelectedSteps steps, string value, string other)
    {
        var text = steps.Text;
        var start = steps.Span.Start;
        foreach (var index in steps.References.SelectMany(reference => reference.Indices).Where(index => index.Text == value).OrderByDescending(index => index.Span.Start))
        {
            text = text[..(index.Span.Start - start)] + other + text[(index.Span.End - start)..];
        }

        return text;
    }
}
