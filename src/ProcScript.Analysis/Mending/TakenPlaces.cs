using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Mending;

/// <summary>The places that the edits of a round have taken.</summary>
internal sealed class TakenPlaces
{
    private readonly Dictionary<string, List<TextSpan>> _taken = new(StringComparer.Ordinal);

    /// <summary>Takes the places of a fix; false, and none is taken, where one of them is taken already.</summary>
    public bool TryTake(Fix fix)
    {
        if (fix.Edits.Any(edit => IsTaken(edit.Place)))
        {
            return false;
        }

        foreach (var edit in fix.Edits)
        {
            if (!_taken.TryGetValue(edit.Place.Path, out var spans))
            {
                _taken.Add(edit.Place.Path, spans = []);
            }

            spans.Insert(IndexOf(spans, edit.Place.Span), edit.Place.Span);
        }

        return true;
    }

    private bool IsTaken(SourceSpan place)
    {
        if (!_taken.TryGetValue(place.Path, out var spans))
        {
            return false;
        }

        // Those that are taken lie apart: only the neighbours can be in the way.
        var next = IndexOf(spans, place.Span);
        return (next < spans.Count && Meet(place.Span, spans[next])) || (next > 0 && Meet(place.Span, spans[next - 1]));
    }

    /// <summary>Stretches that only touch are apart, unless one is empty: then nothing says which text comes first.</summary>
    private static bool Meet(TextSpan first, TextSpan second) => first.Length == 0 || second.Length == 0
        ? first.Start <= second.End && second.Start <= first.End
        : first.Start < second.End && second.Start < first.End;

    private static int IndexOf(List<TextSpan> spans, TextSpan span)
    {
        var index = spans.BinarySearch(span, StartOrder);
        return index < 0 ? ~index : index;
    }

    private static readonly Comparer<TextSpan> StartOrder = Comparer<TextSpan>.Create((first, second) => first.Start.CompareTo(second.Start));
}
