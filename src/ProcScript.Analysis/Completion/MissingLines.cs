using System.Collections.Immutable;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>What steps lack, as lines of the text; over all variants of a procedure, which share one text.</summary>
/// <param name="text">The file of the procedure.</param>
/// <param name="places">The places in it.</param>
/// <param name="outsideLoops">Whether lines go before the loops that steps stand in.</param>
internal sealed class MissingLines(SourceText text, InsertionPlaces places, bool outsideLoops)
{
    private readonly SortedDictionary<int, (InsertionPlace Place, List<string> Lines)> _inserted = [];
    private readonly HashSet<TextSpan> _moved = [];

    /// <summary>The lines, in the order of the text.</summary>
    public IEnumerable<string> Lines => _inserted.Values.SelectMany(insertion => insertion.Lines);

    /// <summary>The edits; those that put lines in, then those that take lines from where they were too late.</summary>
    public ImmutableArray<TextEdit> Edits =>
    [
        .. _inserted.Values.Select(insertion => new TextEdit(insertion.Place.Span, insertion.Place.Join(insertion.Lines))),
        .. _moved.OrderBy(span => span.Start).Select(span => new TextEdit(new SourceSpan(text.Path, StepEdits.WholeLines(text, span)), "")),
    ];

    /// <summary>Takes what one variant lacks.</summary>
    /// <returns>Whether the text can say it, beside what other variants lack.</returns>
    public bool Add(Procedure procedure, StepSupply supply)
    {
        var work = procedure.Work.ToHashSet<Step>(ReferenceEqualityComparer.Instance);
        var inserted = new SortedDictionary<int, (InsertionPlace Place, List<string> Lines)>();
        foreach (var action in supply.Actions)
        {
            var isForWork = work.Contains(action.Before);
            if ((isForWork ? places.AtTheEnd(procedure) : places.Before(action.Before, outsideLoops)) is not { } place
                || WordsOf(action, isForWork) is not { } words)
            {
                return false;
            }

            if (!inserted.TryGetValue(place.At, out var insertion))
            {
                inserted.Add(place.At, insertion = (place, []));
            }

            // A loop says a line once for all its passes.
            insertion.Lines.AddRange(words.Except(insertion.Lines, StringComparer.Ordinal).ToList());
        }

        return Merge(inserted);
    }

    private bool Merge(SortedDictionary<int, (InsertionPlace Place, List<string> Lines)> others)
    {
        foreach (var (at, other) in others)
        {
            if (!_inserted.TryGetValue(at, out var known))
            {
                _inserted.Add(at, other);
            }
            else if (!known.Lines.SequenceEqual(other.Lines, StringComparer.Ordinal))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The lines that say an action; where the author said it too late, those lines themselves.</summary>
    private IReadOnlyList<string>? WordsOf(SuppliedAction action, bool isForWork)
    {
        if (action.WrittenLate.Count > 0)
        {
            if (!action.WrittenLate.TrueForAll(CanMove))
            {
                return null;
            }

            _moved.UnionWith(action.WrittenLate.Select(step => step.Source.Span));
            return [.. action.WrittenLate.Select(step => text.Slice(step.Source.Span))];
        }

        var name = action.Request.Target!.Name;
        var isInItsPlace = !outsideLoops && !isForWork && action.Before.Calls.IsEmpty;
        return (isInItsPlace ? StepEdits.AsWritten(name, action.Before, text) : name) is { } written ? [action.Words(written)] : null;
    }

    /// <summary>Whether a step stands for itself, on a line, with nothing before it that would be left behind.</summary>
    private bool CanMove(Step step) =>
        step.Source.Path == text.Path
        && step.Calls.IsEmpty
        && step.Alerts.IsEmpty
        && text.Slice(step.TargetSpan.Span) == step.Target!.Name
        && text.LineAt(step.Source.Span.Start) == text.LineAt(step.Source.Span.End);
}
