using System.Collections.Immutable;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>Checks an edited procedure with all that shares its text, and says how far the edit may be trusted.</summary>
/// <param name="report">The report before the edit.</param>
/// <param name="own">The procedure in every variant.</param>
/// <param name="node">Its text.</param>
/// <param name="cancellation">Ends the work.</param>
internal sealed class SecondCheck(LibraryReport report, ImmutableArray<ProcedureReport> own, ProcedureSyntax node, CancellationToken cancellation)
{
    private readonly ImmutableArray<ProcedureReport> _callers = [.. report.Procedures.Where(other => Calls(other.Procedure, own[0].Procedure.Declared.Path, node.Span))];
    private LibraryReport? _before;

    /// <summary>The grade of an edit that turns the procedure's file into another text; null where it mends nothing or breaks something.</summary>
    public FixGrade? Judge(string edited)
    {
        var path = own[0].Procedure.Declared.Path;
        _before ??= Check(path, report.Library.Trees[path].Text.Content);
        var after = Check(path, edited);
        var proven = after.Procedures.Where(one => one.IsProven).Select(one => one.Key).ToHashSet();
        if (_callers.Any(caller => caller.IsProven && !proven.Contains(caller.Key)))
        {
            return null;
        }

        var (errors, more) = (Count(after), New(_before, after));
        if (own.All(one => proven.Contains(one.Key)))
        {
            return more.Any(finding => finding.Severity >= Severity.Warning) ? FixGrade.NeedsLook : FixGrade.Safe;
        }

        return errors < Count(_before) && !more.Any(finding => finding.Severity == Severity.Error) ? FixGrade.NeedsLook : null;
    }

    private LibraryReport Check(string path, string content)
    {
        var files = own.Concat(_callers).SelectMany(one => one.Procedure.Files).Distinct(StringComparer.Ordinal);
        var store = new MemorySourceStore(files.Select(file =>
            KeyValuePair.Create(file, file == path ? content : report.Library.Trees[file].Text.Content)));
        return LibraryCheck.Run(store, own[0].Outcome.Settings, cancellation);
    }

    private static int Count(LibraryReport report) => report.Findings.Count(finding => finding.Severity == Severity.Error);

    private static List<ReportedFinding> New(LibraryReport before, LibraryReport after)
    {
        var known = before.Findings.CountBy(WordsOf).ToDictionary();
        return [.. after.Findings.Where(finding => (known[WordsOf(finding)] = known.GetValueOrDefault(WordsOf(finding)) - 1) < 0)];
    }

    private static (string Code, string Path, string Message) WordsOf(ReportedFinding reported) =>
        (reported.Finding.Rule.Code, reported.Finding.Primary.Path, reported.Finding.Message);

    private static bool Calls(Procedure procedure, string path, TextSpan text) => procedure.Stages
        .SelectMany(stage => stage.Steps)
        .Any(step => !step.Calls.IsEmpty && step.Source.Path == path && step.Source.Span.Start >= text.Start && step.Source.Span.End <= text.End);
}
