using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Verbs;

/// <summary>A library that was read and checked, and of it what the user asked about.</summary>
internal sealed class CheckedLibrary
{
    private readonly LibraryReport _report;
    private readonly SourceSelection _selection;
    private readonly ScreenPaths _paths;

    private CheckedLibrary(LibraryReport report, SourceSelection selection, DiskSourceStore store, string currentFolder)
    {
        _report = report;
        _selection = selection;
        _paths = new ScreenPaths(selection, currentFolder);
        HasUnreadableInput = store.HasUnreadableInput;
        Findings = [.. report.Findings.Where(reported => reported.Severity == Severity.Error || selection.IsGiven(reported.Finding.Primary.Path))];
        Procedures = [.. report.Procedures.Where(procedure => selection.IsGiven(procedure.Procedure.Declared.Path))];
    }

    /// <summary>How many files the user asked about.</summary>
    public int FileCount => _selection.Paths.Length;

    /// <summary>Whether one of these could not be read.</summary>
    public bool HasUnreadableInput { get; }

    /// <summary>All findings in the files asked about, and the errors in the files that these use.</summary>
    public ImmutableArray<ReportedFinding> Findings { get; }

    /// <summary>The procedures in the files asked about, each in every variant.</summary>
    public ImmutableArray<ProcedureReport> Procedures { get; }

    /// <summary>Reads and checks.</summary>
    public static async Task<CheckedLibrary> RunAsync(InputRequest request, CheckSettings settings, Surroundings around, CancellationToken stop)
    {
        var selection = SourceSelection.Find(request, around.CurrentFolder);
        DiskSourceStore store = new(selection, around.OpenInput);
        // A check that waits for its input hears of no stop; it writes nothing, and may be left behind.
        var report = await Task.Run(() => LibraryCheck.Run(store, settings, stop), stop).WaitAsync(stop);
        return new CheckedLibrary(report, selection, store, around.CurrentFolder);
    }

    /// <summary>Prints the findings.</summary>
    public void PrintFindings(Terminal terminal, CancellationToken stop)
    {
        FindingPrinter printer = new(terminal, TextOf, _paths);
        foreach (var finding in Findings)
        {
            stop.ThrowIfCancellationRequested();
            printer.Print(finding);
        }
    }

    /// <summary>The exit code where findings of this severity and above are to fail the run.</summary>
    public ExitCode ExitCode(Severity? failOn) =>
        HasUnreadableInput ? Cli.ExitCode.Usage
        : Findings.Any(reported => reported.Severity >= failOn) ? Cli.ExitCode.Findings
        : Cli.ExitCode.Clean;

    private SourceText? TextOf(string path) => _report.Library.Trees.GetValueOrDefault(path)?.Text;
}
