using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// Joins what several runs had to say: a finding that comes up in several variants, with several arguments, in several passes of a loop
/// or through several callers is told once; one that only some variants have says which.
/// </summary>
internal sealed class FindingMerge
{
    private readonly List<Told> _told = [];

    /// <summary>Adds what some runs had to say.</summary>
    /// <param name="runs">All runs; those of one declaration follow each other.</param>
    /// <param name="places">The places of those that had something to say, in order.</param>
    /// <param name="of">Where the procedure or the machine of a run is declared, the machine it was run on, and what was said.</param>
    public void Add<TRun>(
        IReadOnlyList<TRun> runs, IEnumerable<int> places, Func<TRun, (SourceSpan Declared, Machine Variant, ImmutableArray<Finding> Findings)> of)
    {
        foreach (var place in places)
        {
            var (declared, variant, findings) = of(runs[place]);
            foreach (var finding in findings)
            {
                _told.Add(new Told(declared, variant, finding, () => Variants(runs, place, run => of(run) is var (other, machine, _) && other == declared ? machine : null)));
            }
        }
    }

    /// <summary>Each finding once, in the order in which it was first told.</summary>
    public IEnumerable<Finding> Findings() =>
        from told in _told
        group told by (told.Finding.Rule.Code, told.Finding.Primary) into same
        // A procedure by itself knows best: through its callers the same comes with the calls.
        let best = same.MinBy(told => told.Finding.Related.Length)!
        let some = same.Where(told => told.Declared == best.Declared).Select(told => told.Variant)
        let which = VariantWords.Describe(some, best.Variants())
        select which.Length == 0 ? best.Finding : best.Finding with { Message = $"{best.Finding.Message}, {which}" };

    /// <summary>Findings in the order of files and text.</summary>
    public static ImmutableArray<Finding> Sort(IEnumerable<Finding> findings) =>
    [
        .. findings
            .OrderBy(finding => finding.Primary.Path, StringComparer.Ordinal)
            .ThenBy(finding => finding.Primary.Span.Start)
            .ThenBy(finding => finding.Primary.Span.Length)
            .ThenBy(finding => finding.Rule.Code, StringComparer.Ordinal)
            .ThenBy(finding => finding.Message, StringComparer.Ordinal),
    ];

    /// <summary>The machines of the runs around a place that are of the same declaration.</summary>
    private static HashSet<Machine> Variants<TRun>(IReadOnlyList<TRun> runs, int place, Func<TRun, Machine?> machineOf)
    {
        var first = place;
        while (first > 0 && machineOf(runs[first - 1]) is not null)
        {
            first--;
        }

        var variants = new HashSet<Machine>();
        for (var i = first; i < runs.Count && machineOf(runs[i]) is { } machine; i++)
        {
            variants.Add(machine);
        }

        return variants;
    }

    private sealed record Told(SourceSpan Declared, Machine Variant, Finding Finding, Func<HashSet<Machine>> Variants);
}
