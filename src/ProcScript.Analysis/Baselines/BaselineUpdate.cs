using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Baselines;

/// <summary>
/// A baseline as it is to be written. An error is never in it: what is not proven, or can hurt somebody, would pass for good news.
/// </summary>
/// <param name="Entries">The entries.</param>
/// <param name="Kept">How many findings of the earlier one are still there, or were not looked at.</param>
/// <param name="Dropped">How many findings of the earlier one are gone.</param>
/// <param name="Added">How many findings were added.</param>
/// <param name="Refused">How many findings are new and were not added.</param>
/// <param name="Errors">How many findings are errors, and were left out for that.</param>
public sealed record BaselineUpdate(ImmutableArray<BaselineEntry> Entries, int Kept, int Dropped, int Added, int Refused, int Errors)
{
    /// <summary>What a report makes of an earlier baseline.</summary>
    /// <param name="report">What the check came to, not yet held against any baseline.</param>
    /// <param name="earlier">The earlier baseline; null where there is none, and every finding is added.</param>
    /// <param name="isChecked">Whether a file was checked for its own sake, or is no longer there; entries of others stay.</param>
    /// <param name="acceptNew">Whether findings that the earlier one does not know are added.</param>
    public static BaselineUpdate Of(LibraryReport report, Baseline? earlier, Predicate<string> isChecked, bool acceptNew)
    {
        ArgumentNullException.ThrowIfNull(report);
        var before = (earlier?.Entries ?? [])
            .GroupBy(entry => entry.Fingerprint, StringComparer.Ordinal)
            .ToDictionary(same => same.Key, same => same.First() with { Count = same.Sum(entry => entry.Count) }, StringComparer.Ordinal);
        var errors = report.Findings.Count(IsError);
        var now = report.Findings
            .Where(reported => !IsError(reported))
            .GroupBy(reported => reported.Fingerprint.Key, StringComparer.Ordinal)
            .ToDictionary(same => same.Key, same => Entry([.. same]), StringComparer.Ordinal);
        var entries = ImmutableArray.CreateBuilder<BaselineEntry>();
        int kept = 0, dropped = 0, added = 0, refused = 0;
        foreach (var (key, found) in now)
        {
            var known = before.GetValueOrDefault(key);
            var knownCount = known?.Count ?? 0;
            var extra = Math.Max(0, found.Count - knownCount);
            var accepts = acceptNew || earlier is null;
            var count = accepts ? found.Count : found.Count - extra;
            kept += Math.Min(found.Count, knownCount);
            (added, refused) = accepts ? (added + extra, refused) : (added, refused + extra);
            dropped += Math.Max(0, knownCount - found.Count);
            if (count > 0)
            {
                // The words of an entry stay as they are: only what changed is to change in the file.
                entries.Add((known ?? found) with { Count = count });
            }
        }

        foreach (var entry in before.Values.Where(entry => !now.ContainsKey(entry.Fingerprint)))
        {
            if (isChecked(entry.File))
            {
                dropped += entry.Count;
            }
            else
            {
                kept += entry.Count;
                entries.Add(entry);
            }
        }

        return new BaselineUpdate(entries.ToImmutable(), kept, dropped, added, refused, errors);
    }

    /// <summary>Whether a finding is none that a baseline may know.</summary>
    internal static bool IsError(ReportedFinding reported) => reported.Severity == Severity.Error;

    private static BaselineEntry Entry(IReadOnlyList<ReportedFinding> same)
    {
        var finding = same[0].Finding;
        return new BaselineEntry(finding.Primary.Path, finding.Rule.Code, same[0].Fingerprint.Key, same.Count, finding.Message);
    }
}
