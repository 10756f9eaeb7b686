using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Findings;

/// <summary>Findings without repeats: of two of one rule at one place the first counts.</summary>
internal sealed class FindingList
{
    private readonly Dictionary<(string Code, SourceSpan Place), Finding> _findings = [];

    /// <summary>Adds findings.</summary>
    public void AddRange(IEnumerable<Finding> findings)
    {
        foreach (var finding in findings)
        {
            _findings.TryAdd((finding.Rule.Code, finding.Primary), finding);
        }
    }

    /// <summary>Adds what a piece of binding had to say whatever the variant.</summary>
    public void AddRange(FindingSink sink) => AddRange(sink.Findings.Select(raw => raw.Finding));

    /// <summary>Adds what units had to say: first what each says of its own text, which knows the text's variants best.</summary>
    public void AddRange(IReadOnlyCollection<FindingUnit> units)
    {
        var all = units
            .SelectMany(unit => unit.Findings().Select(finding => (Finding: finding, IsOwn: unit.Owns(finding.Primary))))
            .ToArray();
        AddRange(all.Where(one => one.IsOwn).Select(one => one.Finding));
        AddRange(all.Where(one => !one.IsOwn).Select(one => one.Finding));
    }

    /// <summary>All in the order of files and text.</summary>
    public ImmutableArray<Finding> ToImmutable() =>
    [
        .. _findings.Values
            .OrderBy(finding => finding.Primary.Path, StringComparer.Ordinal)
            .ThenBy(finding => finding.Primary.Span.Start)
            .ThenBy(finding => finding.Primary.Span.Length)
            .ThenBy(finding => finding.Rule.Code, StringComparer.Ordinal),
    ];
}
