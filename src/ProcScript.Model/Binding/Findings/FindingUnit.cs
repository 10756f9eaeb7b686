using System.Collections.Immutable;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Findings;

/// <summary>A declaration that was bound in several variants, with what each had to say.</summary>
/// <param name="symbol">The declaration.</param>
/// <param name="options">The options of the machine.</param>
internal sealed class FindingUnit(Symbol symbol, ImmutableArray<Option> options)
{
    private readonly List<(ulong Variant, FindingSink Sink)> _runs = [];

    /// <summary>The units among runs, in their order, without those in which nothing was said.</summary>
    /// <param name="runs">What was run; those of one unit follow each other.</param>
    /// <param name="keyOf">What the runs of one unit have in common.</param>
    /// <param name="unitOf">Makes the unit of a run.</param>
    /// <param name="said">The variant of a run, and what was said.</param>
    public static IEnumerable<FindingUnit> Of<TRun>(
        IEnumerable<TRun> runs, Func<TRun, object> keyOf, Func<TRun, FindingUnit> unitOf, Func<TRun, (ulong Variant, FindingSink Sink)> said)
    {
        var open = new List<TRun>();
        foreach (var run in runs)
        {
            if (open.Count > 0 && !ReferenceEquals(keyOf(open[0]), keyOf(run)))
            {
                if (Close() is { } unit)
                {
                    yield return unit;
                }

                open.Clear();
            }

            open.Add(run);
        }

        if (open.Count > 0 && Close() is { } last)
        {
            yield return last;
        }

        FindingUnit? Close()
        {
            if (open.TrueForAll(run => said(run).Sink.Findings.Count == 0))
            {
                return null;
            }

            var unit = unitOf(open[0]);
            foreach (var run in open)
            {
                var (variant, sink) = said(run);
                unit.Add(variant, sink);
            }

            return unit;
        }
    }

    /// <summary>Adds what was said in one variant. A variant may come several times, with other arguments.</summary>
    public void Add(ulong variant, FindingSink sink) => _runs.Add((variant, sink));

    /// <summary>Whether the place lies in the text of the declaration itself.</summary>
    public bool Owns(SourceSpan place) => place.Path == symbol.File.Path && symbol.Span.Touches(place.Span.Start);

    /// <summary>Each finding once; one that only some variants have says which.</summary>
    public IEnumerable<Finding> Findings()
    {
        if (_runs.All(run => run.Sink.Findings.Count == 0))
        {
            return [];
        }

        ulong[] variants = [.. _runs.Select(run => run.Variant).Distinct()];
        return _runs
            .SelectMany(run => run.Sink.Findings.Select(raw => (run.Variant, Raw: raw)))
            .GroupBy(one => (one.Raw.Finding.Rule.Code, one.Raw.Finding.Primary))
            .Select(group =>
            {
                var first = group.First().Raw;
                ulong[] some = [.. group.Select(one => one.Variant).Distinct()];
                ulong[] all = [.. variants.Where(first.Guards.Hold)];
                var which = first.NamesOptions ? "" : Variants.Describe(some, all, options);
                return which.Length == 0 ? first.Finding : first.Finding with { Message = $"{first.Finding.Message}, {which}" };
            });
    }
}
