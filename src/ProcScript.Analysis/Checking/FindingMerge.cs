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
    private readonly List<(SourceSpan Declared, Machine Variant)> _runs = [];

    /// <summary>Adds what a run had to say.</summary>
    /// <param name="declared">Where the procedure or the machine is declared that was run.</param>
    /// <param name="variant">The machine it was run on.</param>
    /// <param name="findings">What was said.</param>
    public void Add(SourceSpan declared, Machine variant, ImmutableArray<Finding> findings)
    {
        _runs.Add((declared, variant));
        foreach (var finding in findings)
        {
            _told.Add(new Told(declared, variant, finding));
        }
    }

    /// <summary>Each finding once, in the order in which it was first told.</summary>
    public IEnumerable<Finding> Findings()
    {
        var telling = _told.Select(told => told.Declared).ToHashSet();
        var variants = _runs.Where(run => telling.Contains(run.Declared)).ToLookup(run => run.Declared, run => run.Variant);
        return Findings(variants);
    }

    private IEnumerable<Finding> Findings(ILookup<SourceSpan, Machine> variants) =>
        from told in _told
        group told by (told.Finding.Rule.Code, told.Finding.Primary) into same
        // A procedure by itself knows best: through its callers the same comes with the calls.
        let best = same.MinBy(told => told.Finding.Related.Length)!
        let some = same.Where(told => told.Declared == best.Declared).Select(told => told.Variant)
        let which = VariantWords.Describe(some, variants[best.Declared].ToHashSet())
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

    private sealed record Told(SourceSpan Declared, Machine Variant, Finding Finding);
}
