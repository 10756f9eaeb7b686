using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Refactoring;

/// <summary>The fixes of many findings at once.</summary>
public static class RuleFixes
{
    /// <summary>One fix for all findings of a rule in a file, as far as each has a single one and they do not meet; null for fewer than two.</summary>
    /// <param name="report">What a check of the library came to.</param>
    /// <param name="path">The file.</param>
    /// <param name="rule">The rule.</param>
    public static Fix? AllOf(LibraryReport report, string path, RuleInfo rule)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(rule);
        TakenPlaces places = new();
        var request = new MendRequest { NeedsLook = true };
        Fix[] fixes =
        [
            .. from reported in report.Findings
               where reported.Finding.Rule.Code == rule.Code && reported.Finding.Primary.Path == path
               let fix = MendRounds.Chosen(reported.Finding, request)
               where fix is not null && fix.Edits.All(edit => edit.Place.Path == path)
               group fix by MendCandidate.TextOf(fix) into same
               select same.First() into fix
               where places.TryTake(fix)
               select fix,
        ];
        return fixes.Length < 2
            ? null
            : new Fix(
                $"Fix all {fixes.Length} findings of `{rule.Name}` in this file",
                fixes.Max(fix => fix.Grade),
                [.. fixes.SelectMany(fix => fix.Edits).OrderBy(edit => edit.Place.Span.Start)]);
    }

    /// <summary>The edits of all safe fixes in a file, round by round, each held to a second check.</summary>
    /// <param name="report">What a check of the library came to.</param>
    /// <param name="path">The file.</param>
    /// <param name="cancellation">Ends the work.</param>
    public static ImmutableArray<TextEdit> Safe(LibraryReport report, string path, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        var store = new MemorySourceStore(report.Library.Trees.Select(file => KeyValuePair.Create(file.Key, file.Value.Text.Content)));
        var mended = LibraryMend.Run(store, report.Settings, new MendRequest { MayChange = file => file == path }, cancellation);
        return [.. mended.Files.Where(file => file.Path == path && file.After != file.Before).Select(file => file.Edit())];
    }
}
