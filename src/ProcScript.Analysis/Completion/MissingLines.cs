using System.Collections.Immutable;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>What steps lack, as lines of the text; over all variants of a procedure, which share one text.</summary>
/// <param name="text">The file of the procedure.</param>
/// <param name="places">The places in it.</param>
/// <param name="outsideLoops">Whether lines go before the loops that steps stand in.</param>
internal sealed class MissingLines(SourceText text, InsertionPlaces places, bool outsideLoops)
{
    private readonly SortedDictionary<int, PlacedLines> _inserted = [];
    private readonly HashSet<TextSpan> _moved = [];

    /// <summary>Takes what one variant lacks.</summary>
    /// <returns>Whether the text can say it.</returns>
    public bool Add(Procedure procedure, StepSupply supply)
    {
        var work = procedure.Work.ToHashSet<Step>(ReferenceEqualityComparer.Instance);
        foreach (var action in supply.Actions)
        {
            var isForWork = work.Contains(action.Before);
            if ((isForWork ? places.AtTheEnd() : places.Before(action.Before, outsideLoops)) is not { } place
                || WordsOf(action, isForWork) is not { } words)
            {
                return false;
            }

            if (!_inserted.TryGetValue(place.At, out var lines))
            {
                _inserted.Add(place.At, lines = new PlacedLines(place));
            }

            lines.Add(procedure, words);
        }

        return true;
    }

    /// <summary>The lines at their places; null where some cannot be said of the variants that lack them alone.</summary>
    /// <param name="variants">The procedure in every variant.</param>
    /// <param name="node">Its text.</param>
    public ImmutableArray<(InsertionPlace Place, ImmutableArray<VariantLines> Groups)>? Grouped(ImmutableArray<Procedure> variants, ProcedureSyntax node)
    {
        var tests = new VariantTests(node, variants);
        var all = ImmutableArray.CreateBuilder<(InsertionPlace, ImmutableArray<VariantLines>)>();
        foreach (var lines in _inserted.Values)
        {
            if (lines.Group([.. variants.Where(variant => places.IsReached(lines.Place, variant))], tests) is not { } groups)
            {
                return null;
            }

            all.Add((lines.Place, groups));
        }

        return all.ToImmutable();
    }

    /// <summary>The edits that take lines from where they were too late.</summary>
    public IEnumerable<TextEdit> Removals =>
        _moved.OrderBy(span => span.Start).Select(span => new TextEdit(new SourceSpan(text.Path, StepEdits.WholeLines(text, span)), ""));

    /// <summary>The lines that say an action; where the author said it too late, those lines themselves.</summary>
    private IReadOnlyList<MissingLine>? WordsOf(SuppliedAction action, bool isForWork)
    {
        if (action.WrittenLate.Count > 0)
        {
            if (!action.WrittenLate.TrueForAll(CanMove))
            {
                return null;
            }

            _moved.UnionWith(action.WrittenLate.Select(step => step.Source.Span));
            return [.. action.WrittenLate.Select(step => new MissingLine(text.Slice(step.Source.Span), step.Source))];
        }

        var name = action.Request.Target!.Name;
        var isInItsPlace = !outsideLoops && !isForWork && action.Before.Calls.IsEmpty;
        return (isInItsPlace ? StepEdits.AsWritten(name, action.Before, text) : name) is { } written ? [new MissingLine(action.Words(written), null)] : null;
    }

    /// <summary>Whether a step stands for itself, on a line, with nothing before it that would be left behind.</summary>
    private bool CanMove(Step step) =>
        step.Source.Path == text.Path
        && step.Calls.IsEmpty
        && step.Alerts.IsEmpty
        && text.Slice(step.TargetSpan.Span) == step.Target!.Name
        && text.LineAt(step.Source.Span.Start) == text.LineAt(step.Source.Span.End);
}
