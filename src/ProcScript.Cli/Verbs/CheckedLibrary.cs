using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Baselines;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Output;
using ProcScript.Cli.Reports;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Versions;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>A library that was read and checked, and of it what the user asked about.</summary>
internal sealed class CheckedLibrary
{
    private readonly SourceSelection _selection;
    private readonly ScreenPaths _paths;
    private readonly DiskSourceStore _store;

    private CheckedLibrary(LibraryReport report, SourceSelection selection, DiskSourceStore store, string currentFolder)
    {
        _selection = selection;
        _store = store;
        _paths = new ScreenPaths(selection, currentFolder);
        HasUnreadableInput = store.HasUnreadableInput;
        Report = report.About(selection.IsGiven);
    }

    private CheckedLibrary(CheckedLibrary other, LibraryReport report)
    {
        _selection = other._selection;
        _store = other._store;
        _paths = other._paths;
        HasUnreadableInput = other.HasUnreadableInput;
        Report = report;
    }

    /// <summary>The library's root folder, as a full path.</summary>
    public string Root => _selection.Root;

    /// <summary>The files.</summary>
    public DiskSourceStore Store => _store;

    /// <summary>How many files the user asked about.</summary>
    public int FileCount => Report.Scope is { FileCount: not null } scope ? _selection.Paths.Count(scope.Holds) : _selection.Paths.Length;

    /// <summary>Whether one of these could not be read.</summary>
    public bool HasUnreadableInput { get; }

    /// <summary>What the check came to in the files asked about, with the errors in the files that these use.</summary>
    public LibraryReport Report { get; }

    /// <summary>All findings that nothing silences.</summary>
    public ImmutableArray<ReportedFinding> Findings => Report.Findings;

    /// <summary>The procedures in the files asked about, each in every variant.</summary>
    public ImmutableArray<ProcedureReport> Procedures => Report.Procedures;

    /// <summary>The same procedures with the authors' texts in the language of the packs, in the same order.</summary>
    public ImmutableArray<ProcedureReport> Told(CancellationToken stop) => Report.Settings.Translation is { } translation
        ? LibraryCheck.Run(LibraryBinder.Bind(translation.Over(_store), stop), Report.Settings with { Translation = null }, stop).About(_selection.IsGiven).Procedures
        : Procedures;

    /// <summary>Reads and checks, so that plans can be made.</summary>
    public static async Task<CheckedLibrary> RunAsync(
        InputRequest request, Func<ISourceStore, CheckSettings> settings, Surroundings around, CancellationToken stop)
    {
        var store = StoreOf(request, around);
        return await RunAsync(store, around, stop, () => LibraryCheck.Run(store, Dated(settings(store), around), stop));
    }

    /// <summary>Reads and checks for the findings.</summary>
    public static Task<CheckedLibrary> JudgeAsync(
        InputRequest request, Func<ISourceStore, CheckSettings> settings, Surroundings around, CancellationToken stop) =>
        JudgeAsync(StoreOf(request, around), settings, since: null, around, stop);

    /// <summary>
    /// Reads all and checks for the findings what has changed since a revision, with all that uses it; everything where there is no revision.
    /// </summary>
    /// <param name="store">The files.</param>
    /// <param name="settings">What the shop has chosen for such files.</param>
    /// <param name="since">The revision.</param>
    /// <param name="around">The surroundings.</param>
    /// <param name="stop">Ends the work.</param>
    public static async Task<CheckedLibrary> JudgeAsync(
        DiskSourceStore store, Func<ISourceStore, CheckSettings> settings, string? since, Surroundings around, CancellationToken stop)
    {
        // Where nobody can tell what has changed, all is checked.
        var changed = since is null ? null : await ChangedFiles.SinceAsync(since, store.Selection, stop);
        return await RunAsync(store, around, stop, () => Judge(store, Dated(settings(store), around), changed, stop));
    }

    /// <summary>What the check came to, for outputs to render.</summary>
    public CheckOutcome Outcome => new()
    {
        Report = Report,
        Paths = RepositoryPaths.For(Root),
        FileCount = FileCount,
        HasUnreadableInput = HasUnreadableInput,
    };

    /// <summary>The library in which what a baseline knows is silenced.</summary>
    public CheckedLibrary Against(Baseline baseline) => new(this, BaselineComparison.Compare(Report, baseline, IsChecked));

    /// <summary>Whether the findings of a file are all known: it was asked about and not left, or it is gone.</summary>
    public bool IsChecked(string path) => (_selection.IsGiven(path) && Report.Scope?.Holds(path) != false) || !File.Exists(Path.Combine(Root, path));

    /// <summary>How a file of the library is named to the user.</summary>
    public string ScreenNameOf(string path) => _paths.Of(path);

    /// <summary>Prints the findings that are to be told.</summary>
    public void PrintFindings(CheckOutcome outcome, Terminal terminal, CancellationToken stop)
    {
        FindingPrinter printer = new(terminal, Report.TextOf, _paths) { NamesAll = outcome.NamesAll };
        foreach (var finding in outcome.Listed)
        {
            stop.ThrowIfCancellationRequested();
            printer.Print(finding);
        }

        if (outcome.NotListed > 0)
        {
            terminal.WriteLine(new Piece($"{Counted.Of(outcome.NotListed, "more finding")} not shown"));
            terminal.WriteLine();
        }
    }

    /// <summary>The exit code where findings of this severity and above are to fail the run.</summary>
    public ExitCode ExitCode(Severity? failOn) =>
        HasUnreadableInput ? Cli.ExitCode.Usage
        : Findings.Any(reported => reported.Severity >= failOn) ? Cli.ExitCode.Findings
        : Cli.ExitCode.Clean;

    private static CheckSettings Dated(CheckSettings settings, Surroundings around) => settings with { Today = settings.Today ?? around.Today };

    private static DiskSourceStore StoreOf(InputRequest request, Surroundings around) =>
        new(SourceSelection.Find(request, around.CurrentFolder), around.OpenInput);

    private static async Task<CheckedLibrary> RunAsync(DiskSourceStore store, Surroundings around, CancellationToken stop, Func<LibraryReport> check)
    {
        // A check that waits for its input hears of no stop; it writes nothing, and may be left behind.
        var report = await Task.Run(check, stop).WaitAsync(stop);
        return new CheckedLibrary(report, store.Selection, store, around.CurrentFolder);
    }

    private static LibraryReport Judge(DiskSourceStore store, CheckSettings settings, FrozenSet<string>? changed, CancellationToken stop)
    {
        // What the shop chooses has a bearing on every file, and so has what it chose in a file that is gone.
        if (changed is null || changed.Any(path => Path.GetFileName(path) == SettingsKeys.FileName || settings.Files.Any(file => file.Path == path)))
        {
            return LibraryCheck.Judge(store, settings, stop);
        }

        var library = LibraryBinder.Bind(store, stop);
        return LibraryCheck.Judge(library, settings, CheckScope.TouchedBy(library, changed), stop);
    }
}
