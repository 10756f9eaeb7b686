using System.Collections.Immutable;
using ProcScript.Analysis.Checking;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;

namespace ProcScript.Analysis.Mending;

/// <summary>Mends a library by the fixes of its findings: texts in, texts out.</summary>
public static class LibraryMend
{
    /// <summary>
    /// Applies the fixes that are asked for, round by round, until nothing more is to be mended. A fix stays only if its finding goes, no
    /// error comes and, for a safe one, every pack that was proven says what it said. A file that was laid out before is laid out after.
    /// </summary>
    /// <param name="store">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="request">What is to be mended.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static MendReport Run(ISourceStore store, CheckSettings settings, MendRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(settings);
        MendSource source = new(store);
        CheckMemory memory = new();
        return Run(source, request, edited => LibraryCheck.Run(LibraryBinder.Bind(source.With(edited), cancellation), settings, memory, cancellation));
    }

    /// <summary>The same by a check of the caller's.</summary>
    internal static MendReport Run(MendSource source, MendRequest request, Func<ImmutableSortedDictionary<string, string>, LibraryReport> check)
    {
        ArgumentNullException.ThrowIfNull(request);
        var start = State(ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));
        var rounds = new MendRounds(request, State);
        var end = LaidOut(start, rounds.Run(start), State);
        return new MendReport
        {
            Files = [.. end.Edited.Select(file => new MendedFile(file.Key, source.TextOf(file.Key), file.Value))],
            Mended = [.. rounds.Mended],
            Refused = [.. rounds.Refused],
            Fights = rounds.Fights,
            Left = [.. end.Report.Findings.Where(reported => request.MayChange(reported.Finding.Primary.Path)).Select(reported => new LeftFinding(reported, Why(reported.Finding, request)))],
            After = end.Report,
        };

        MendState State(ImmutableSortedDictionary<string, string> edited)
        {
            var changed = edited.RemoveRange(edited.Where(file => file.Value == source.TextOf(file.Key)).Select(file => file.Key));
            return new MendState(changed, check(changed));
        }
    }

    /// <summary>Lays out again what was laid out before the edits; a file that was not is its author's to lay out.</summary>
    internal static MendState LaidOut(MendState start, MendState end, Func<ImmutableSortedDictionary<string, string>, MendState> check)
    {
        var texts = end.Edited;
        foreach (var path in end.Edited.Keys)
        {
            if (Formatter.Edits(start.Report.Library.Trees[path]) is { IsEmpty: true }
                && Formatter.Format(end.Report.Library.Trees[path]) is { } formatted)
            {
                texts = texts.SetItem(path, formatted);
            }
        }

        return ReferenceEquals(texts, end.Edited) ? end : check(texts);
    }

    private static LeftBecause Why(Finding finding, MendRequest request) => finding.Fixes.Where(fix => fix.Grade != FixGrade.DisplayOnly).ToList() switch
    {
        [] => LeftBecause.NoFix,
        _ when request.Rules?.Contains(finding.Rule.Code) == false => LeftBecause.OtherRule,
        var fixes when MendRounds.Chosen(finding, request) is not null => LeftBecause.Refused,
        var fixes when fixes.Count(fix => fix.Grade == FixGrade.Safe) > 1 || (fixes.Count > 1 && fixes.TrueForAll(fix => fix.Grade == FixGrade.NeedsLook)) => LeftBecause.Choice,
        _ => LeftBecause.NeedsLook,
    };
}
