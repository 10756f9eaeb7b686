using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>A library that was read and checked, and of it what the user asked about.</summary>
internal sealed class CheckedLibrary
{
    private readonly SourceSelection _selection;
    private readonly ScreenPaths _paths;

    private CheckedLibrary(LibraryReport report, SourceSelection selection, DiskSourceStore store, string currentFolder)
    {
        _selection = selection;
        _paths = new ScreenPaths(selection, currentFolder);
        HasUnreadableInput = store.HasUnreadableInput;
        Report = report.About(selection.IsGiven);
    }

    /// <summary>How many files the user asked about.</summary>
    public int FileCount => _selection.Paths.Length;

    /// <summary>Whether one of these could not be read.</summary>
    public bool HasUnreadableInput { get; }

    /// <summary>What the check came to in the files asked about, with the errors in the files that these use.</summary>
    public LibraryReport Report { get; }

    /// <summary>All findings that nothing silences.</summary>
    public ImmutableArray<ReportedFinding> Findings => Report.Findings;

    /// <summary>The procedures in the files asked about, each in every variant.</summary>
    public ImmutableArray<ProcedureReport> Procedures => Report.Procedures;

    /// <summary>Reads and checks.</summary>
    public static async Task<CheckedLibrary> RunAsync(InputRequest request, CheckSettings settings, Surroundings around, CancellationToken stop)
    {
        var selection = SourceSelection.Find(request, around.CurrentFolder);
        DiskSourceStore store = new(selection, around.OpenInput);
        var dated = settings with { Today = settings.Today ?? around.Today };
        // A check that waits for its input hears of no stop; it writes nothing, and may be left behind.
        var report = await Task.Run(() => LibraryCheck.Run(store, dated, stop), stop).WaitAsync(stop);
        return new CheckedLibrary(report, selection, store, around.CurrentFolder);
    }

    /// <summary>Prints the findings.</summary>
    public void PrintFindings(Terminal terminal, CancellationToken stop)
    {
        FindingPrinter printer = new(terminal, Report.TextOf, _paths);
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
}
