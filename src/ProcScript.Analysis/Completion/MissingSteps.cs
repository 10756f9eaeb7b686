using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reading;
using ProcScript.Analysis.Refactoring;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>
/// Adds what a strip lacks: off what still holds, away with what hides, isolated what is live, no more than what the steps need, right before
/// them. A step that the author wrote too late moves up. The edited text is checked again before anything is said of it.
/// </summary>
public static class MissingSteps
{
    private const int MostShown = 4;

    /// <summary>The edit that adds what the steps at a place lack; null where they lack nothing, or nothing helps.</summary>
    /// <param name="report">What a check of the library came to.</param>
    /// <param name="place">The word of a step, a stage, the work, or a whole procedure.</param>
    /// <param name="cancellation">Ends the work.</param>
    public static Fix? For(LibraryReport report, SourceSpan place, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (!report.Library.Trees.TryGetValue(place.Path, out var tree)
            || tree.Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(one => Holds(one.Span, place.Span)) is not { } node)
        {
            return null;
        }

        ImmutableArray<ProcedureReport> own =
            [.. report.Procedures.Where(one => one.Procedure.IsOf(place.Path, node))];
        var lacking = own.Where(one => one.Outcome.Strip?.Failures.Any(failure => IsAt(place, failure.Step)) == true).ToList();
        if (lacking.Count == 0 || own.Any(one => one.Outcome.Strip is null))
        {
            return null;
        }

        var check = new SecondCheck(report, own, node, cancellation);
        var places = new InsertionPlaces(tree.Text, node, name => TitleOf(report, name));
        Fix? best = null;
        foreach (var outsideLoops in (ReadOnlySpan<bool>)[false, true])
        {
            var lines = new MissingLines(tree.Text, places, outsideLoops);
            if (Supply(lacking, place, lines)
                && lines.Grouped([.. own.Select(one => one.Procedure)], node) is { IsEmpty: false } groups
                && Fix(tree, groups, lines.Removals, check) is { } fix
                && fix.Grade < (best?.Grade ?? FixGrade.DisplayOnly))
            {
                best = fix;
            }
        }

        return best is { } found && new PrecautionGuard(report.Library).Keeps(found) ? found : null;
    }

    /// <summary>What a procedure is called, where that is the same with all arguments; else its name in words.</summary>
    private static string TitleOf(LibraryReport report, string name) =>
        report.Procedures.FirstOrDefault(one => one.Procedure.Name == name)?.Procedure.Declared is { } declared
        && report.Library.Trees[declared.Path].Root.Declarations.FirstOrDefault(one => one.Name.Span == declared.Span)?.Title?.Value is { } title
        && !title.Contains('{', StringComparison.Ordinal)
            ? title
            : name.Replace('_', ' ');

    /// <summary>Gathers the lines that the variants lack; false where the text cannot say them.</summary>
    private static bool Supply(List<ProcedureReport> lacking, SourceSpan place, MissingLines lines)
    {
        foreach (var one in lacking)
        {
            var supply = new StepSupply(step => IsAt(place, step));
            StripRunner.Run(new SeenLibrary(one.Library, isNoted: false), new MachineFacts(one.Procedure.Machine), one.Procedure, supply);
            if (!lines.Add(one.Procedure, supply))
            {
                return false;
            }
        }

        return true;
    }

    private static Fix? Fix(
        SyntaxTree tree, ImmutableArray<(InsertionPlace Place, ImmutableArray<VariantLines> Groups)> lines, IEnumerable<TextEdit> removals, SecondCheck check)
    {
        ImmutableArray<TextEdit> all = [.. lines.Select(placed => new TextEdit(placed.Place.Span, placed.Place.Join(placed.Groups))), .. removals];
        ImmutableArray<TextEdit> inOrder = [.. all.OrderBy(edit => edit.Place.Span.Start).ThenBy(edit => edit.Place.Span.Length)];
        if (inOrder.Zip(inOrder.Skip(1)).Any(pair => pair.Second.Place.Span.Start < pair.First.Place.Span.End))
        {
            // A line would have to go into one that moves.
            return null;
        }

        var edited = TextEdits.Apply(tree.Text.Content, inOrder);
        var formatted = Formatter.Format(tree) == tree.Text.Content ? Formatter.Format(SyntaxTree.Parse(new SourceText(tree.Text.Path, edited))) : null;
        var edits = formatted is null || formatted == edited ? all : [EditedFile.Difference(tree.Text, formatted)];
        return check.Judge(formatted ?? edited) is { } grade ? new Fix(Title([.. lines.SelectMany(placed => placed.Groups).SelectMany(group => group.Told)]), grade, edits) : null;
    }

    private static string Title(IReadOnlyList<string> lines) =>
        $"Add the missing {(lines.Count == 1 ? "step" : "steps")} {string.Join(", ", lines.Take(MostShown))}"
        + (lines.Count > MostShown ? $" and {lines.Count - MostShown} more" : "");

    /// <summary>Whether a step, or the call that brings it, stands at a place.</summary>
    private static bool IsAt(SourceSpan place, Step step)
    {
        var own = step.Calls.IsEmpty ? step.VerbSpan : step.Calls[0];
        return own.Path == place.Path && Holds(place.Span, own.Span);
    }

    private static bool Holds(TextSpan outer, TextSpan inner) => outer.Start <= inner.Start && inner.End <= outer.End;
}
