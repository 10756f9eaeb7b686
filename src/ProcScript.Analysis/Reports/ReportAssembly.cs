using System.Collections.Immutable;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Wording;
using ProcScript.Model;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reports;

/// <summary>
/// Makes the report of what a check found: what is silenced, how much each finding weighs, what it is known by. That is a matter of each file
/// by itself, and done again only where its text or its findings are others than in the report before.
/// </summary>
internal sealed class ReportAssembly
{
    private Dictionary<string, FileReport> _files = new(StringComparer.Ordinal);
    private DateOnly? _day;

    /// <summary>The report.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What was chosen about the check; but for the day the same every time.</param>
    /// <param name="findings">All that was found, in any order.</param>
    /// <param name="allowing">The files with <c>// proc: allow</c> comments.</param>
    /// <param name="isWhole">Whether the rules about the library as a whole were asked.</param>
    /// <param name="procedures">What came of the procedures.</param>
    public LibraryReport Report(
        Library library,
        CheckSettings settings,
        IEnumerable<Finding> findings,
        IReadOnlyCollection<string> allowing,
        bool isWhole,
        ImmutableArray<ProcedureReport> procedures)
    {
        var texts = settings.Files.ToImmutableSortedDictionary(file => file.Path, file => file, StringComparer.Ordinal);
        var found = allowing.ToDictionary(path => path, _ => new List<Finding>(), StringComparer.Ordinal);
        foreach (var finding in findings)
        {
            if (!found.TryGetValue(finding.Primary.Path, out var own))
            {
                found.Add(finding.Primary.Path, own = []);
            }

            own.Add(finding);
        }

        if (_day != settings.Today)
        {
            _files.Clear();
            _day = settings.Today;
        }

        var judged = JudgedFiles.Of(library, procedures.Where(procedure => !procedure.IsProven).Select(procedure => procedure.Procedure));
        var guard = new PrecautionGuard(library);
        var files = new Dictionary<string, FileReport>(StringComparer.Ordinal);
        foreach (var (path, own) in found)
        {
            var tree = library.Trees.GetValueOrDefault(path);
            var text = tree?.Text ?? texts.GetValueOrDefault(path);
            // A file without comments is the same however much was judged.
            var extent = tree is null || tree.Suppressions.IsEmpty ? default : new JudgedExtent(isWhole, judged.Holds(path), judged.AreAll);
            files.Add(path, _files.TryGetValue(path, out var known) && known.Holds(text, own, extent) ? known : FileReport.Of(tree, text, own, extent, settings, guard));
        }

        _files = files;
        FileReport[] all = [.. files.OrderBy(file => file.Key, StringComparer.Ordinal).Select(file => file.Value)];
        return new LibraryReport
        {
            Library = library,
            Settings = settings,
            Findings = [.. all.SelectMany(file => file.Findings)],
            Silenced = [.. all.SelectMany(file => file.Silenced)],
            Suppressions = [.. all.SelectMany(file => file.Suppressions)],
            Procedures = procedures,
            OtherTexts = texts,
        };
    }

    /// <summary>What is reported of one file.</summary>
    private sealed record FileReport(
        SourceText? Text,
        List<Finding> Found,
        JudgedExtent Extent,
        ImmutableArray<ReportedFinding> Findings,
        ImmutableArray<ReportedFinding> Silenced,
        ImmutableArray<ReportedSuppression> Suppressions,
        bool IsOfOtherFiles)
    {
        public static FileReport Of(
            SyntaxTree? tree, SourceText? text, List<Finding> found, JudgedExtent extent, CheckSettings settings, PrecautionGuard guard)
        {
            // A rule that is off says nothing, and leaves nothing for a comment to silence.
            var spoken = found.FindAll(finding => SeverityOf(finding) is not null);
            var (all, silencings, suppressions) = Checking.Suppressions.Apply(tree, settings, extent, spoken);
            var fingerprints = new Fingerprints(text);
            guard.HasLookedAtCalls = false;
            var reported = new List<ReportedFinding>();
            foreach (var finding in FindingMerge.Sort(all))
            {
                if (SeverityOf(finding) is { } severity)
                {
                    reported.Add(new ReportedFinding(guard.Guarded(finding), severity)
                    {
                        Fingerprint = fingerprints.Next(finding),
                        Silencing = silencings.GetValueOrDefault(finding),
                    });
                }
            }

            return new FileReport(
                text,
                found,
                extent,
                [.. reported.Where(one => one.Silencing is null)],
                [.. reported.Where(one => one.Silencing is not null)],
                suppressions,
                guard.HasLookedAtCalls);

            Severity? SeverityOf(Finding finding) => settings.For(finding.Primary.Path).SeverityOf(finding.Rule);
        }

        public bool Holds(SourceText? text, List<Finding> found, JudgedExtent extent) =>
            !IsOfOtherFiles && ReferenceEquals(text, Text) && extent == Extent && found.SequenceEqual(Found);
    }
}
