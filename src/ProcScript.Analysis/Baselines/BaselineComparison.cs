using ProcScript.Analysis.Reports;
using ProcScript.Analysis.Rules.Baselines;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Baselines;

/// <summary>Holds a report against a baseline. An error is told whatever the baseline says.</summary>
public static class BaselineComparison
{
    /// <summary>The report in which what the baseline knows is silenced, and what it knows in vain is found.</summary>
    /// <param name="report">What the check came to.</param>
    /// <param name="baseline">The baseline.</param>
    /// <param name="isChecked">Whether a file was checked for its own sake, or is no longer there; of others nothing is known.</param>
    public static LibraryReport Compare(LibraryReport report, Baseline baseline, Predicate<string> isChecked)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(baseline);
        var entries = new BaselinePlaces(baseline.Text).Find(baseline.Entries).ToList();
        var left = new Dictionary<string, Queue<Allowance>>(StringComparer.Ordinal);
        foreach (var (entry, place) in entries)
        {
            if (!left.TryGetValue(entry.Fingerprint, out var allowances))
            {
                left[entry.Fingerprint] = allowances = new Queue<Allowance>();
            }

            allowances.Enqueue(new Allowance(entry, place));
        }

        var judged = report.Findings.Select(finding => Known(finding, left)).ToList();
        var stale = left.Values
            .SelectMany(allowances => allowances)
            .Where(allowance => isChecked(allowance.Entry.File))
            .OrderBy(allowance => allowance.Place.Span.Start)
            .Select(allowance => StaleBaselineEntry.At(allowance.Place, allowance.Entry, allowance.Used));
        var severity = report.Settings.For(baseline.Text.Path).SeverityOf(StaleBaselineEntry.Id);
        var fingerprints = new Fingerprints(baseline.Text);
        return report with
        {
            Baseline = baseline.Text.Path,
            OtherTexts = report.OtherTexts.SetItem(baseline.Text.Path, baseline.Text),
            Findings =
            [
                .. judged.Where(finding => finding.Silencing is null),
                .. severity is { } weight ? stale.Select(finding => new ReportedFinding(finding, weight) { Fingerprint = fingerprints.Next(finding) }) : [],
            ],
            Silenced = [.. report.Silenced.Concat(judged.Where(finding => finding.Silencing is not null)).OrderBy(One.Path, StringComparer.Ordinal).ThenBy(One.Start)],
        };
    }

    private static ReportedFinding Known(ReportedFinding finding, Dictionary<string, Queue<Allowance>> left)
    {
        if (!left.TryGetValue(finding.Fingerprint.Key, out var allowances) || !allowances.TryPeek(out var first))
        {
            return finding;
        }

        first.Used++;
        if (first.Used == first.Entry.Count)
        {
            allowances.Dequeue();
        }

        // An earlier program may have written an error down. It is found, so that its entry is not stale; it goes with the next writing.
        return BaselineUpdate.IsError(finding)
            ? finding
            : finding with { Silencing = new Silencing(SilencingKind.Baseline, first.Place, Reason: "") };
    }

    private static class One
    {
        public static string Path(ReportedFinding reported) => reported.Finding.Primary.Path;

        public static int Start(ReportedFinding reported) => reported.Finding.Primary.Span.Start;
    }

    private sealed class Allowance(BaselineEntry entry, SourceSpan place)
    {
        public BaselineEntry Entry => entry;

        public SourceSpan Place => place;

        public int Used { get; set; }
    }
}
