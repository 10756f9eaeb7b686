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
