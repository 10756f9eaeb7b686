using System.Collections.Immutable;
using System.Text.Json;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Learning;

namespace ProcScript.Cli.Jobs;

/// <summary>What <c>learn</c> is asked to do.</summary>
/// <param name="Jobs">The folders of jobs.</param>
/// <param name="Input">The library.</param>
/// <param name="Settings">What is chosen about the check.</param>
/// <param name="AtLeast">How many jobs have to tell the same.</param>
/// <param name="Only">The sorts of suggestions that are wanted; empty for all.</param>
/// <param name="Apply">Whether to write.</param>
/// <param name="Diff">Whether to show the files as they would come out.</param>
/// <param name="Json">Whether to tell it for programs.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record LearnVerbRequest(
    ImmutableArray<string> Jobs, InputRequest Input, SettingsRequest Settings, int AtLeast, ImmutableArray<string> Only, bool Apply, bool Diff, bool Json, ColourChoice Colour);

/// <summary><c>learn</c>: what the records of jobs teach the library.</summary>
internal static class LearnVerb
{
    /// <summary>The sorts of suggestions, as they are typed.</summary>
    public static ImmutableArray<string> Sorts { get; } = [.. Enum.GetValues<LessonSort>().Select(sort => sort.ToString().ToLowerInvariant())];

    /// <summary>Learns, writes or shows, and tells.</summary>
    public static async Task<ExitCode> RunAsync(LearnVerbRequest request, Surroundings around, CancellationToken stop)
    {
        if (request is { Apply: true, Diff: true })
        {
            throw new UsageException("--diff writes nothing and --apply does: say one of them.");
        }

        var jobs = await JobFolders.FindAsync(request.Jobs, around.CurrentFolder, stop);
        var selection = SourceSelection.Find(request.Input, around.CurrentFolder);
        if (selection.StandardInput is not null)
        {
            throw new UsageException("a library comes from files: --in names a folder or a file, not '-'.");
        }

        foreach (var (place, name) in jobs)
        {
            if (selection.Paths.FirstOrDefault(path => LibraryFolder.Holds(place.Folder, Path.Combine(selection.Root, path))) is { } frozen)
            {
                throw new UsageException($"'{frozen}' is what '{name}' was made from, and stays as it was: --in names the shop's library without its jobs.");
            }
        }

        DiskSourceStore store = new(selection, around.OpenInput);
        var settings = request.Settings.Read(store, around.Today);
        var (seen, areAllUsed) = await JobFolders.SeeAsync(jobs, around, stop);
        var learn = new LearnRequest
        {
            AtLeast = request.AtLeast,
            Only = [.. Enum.GetValues<LessonSort>().Where(sort => request.Only.Contains(Sorts[(int)sort]))],
            MayChange = selection.IsGiven,
        };
        var report = await Task.Run(() => Lessons.Of(seen, store, settings, learn, stop), stop).WaitAsync(stop);
        store.RefuseUnreadable();
        if (!seen.IsEmpty && report.Document.LeftOut.Length == seen.Length)
        {
            throw new UsageException($"no job is of this library: {report.Document.LeftOut[0]}. --in names the library.");
        }

        if (request.Apply)
        {
            stop.ThrowIfCancellationRequested();
            PendingFiles.Rewrite(selection, report.Texts.Files);
        }

        if (request.Json)
        {
            around.Output.Write(LogCommands.DisarmJson(JsonSerializer.Serialize(report.Document, LearnJson.Published.LearnDocument) + "\n"));
        }
        else
        {
            new LearnListing(report, request, new ScreenPaths(selection, around.CurrentFolder)).Print(Terminal.For(around, request.Colour));
        }

        var isOpen = request.Apply ? report.Document.Suggestions.Length > report.Fixes.Count : !report.Document.Suggestions.IsEmpty;
        return isOpen || !areAllUsed ? ExitCode.Findings : ExitCode.Clean;
    }
}
