using ProcScript.Analysis.Baselines;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary><c>baseline write</c>: writes down what a library has of findings. Over an earlier one it only takes away.</summary>
internal static class BaselineVerb
{
    /// <summary>Checks and writes.</summary>
    public static async Task<ExitCode> WriteAsync(BaselineRequest request, Surroundings around, CancellationToken stop)
    {
        DiskSourceStore store = new(SourceSelection.Find(request.Input, around.CurrentFolder), around.OpenInput);
        var library = await CheckedLibrary.JudgeAsync(store, request.Settings.Read, since: null, around, stop);
        if (library.HasUnreadableInput)
        {
            throw new UsageException("a file could not be read, so that its findings are not known; nothing was written. See 'procscript check'.");
        }

        OutputFile.RefuseInput(request.Output, store, around);
        var earlier = OutputFile.IsThere(request.Output, around) ? BaselineFile.Read(request.Output, library.Root, around.CurrentFolder) : null;
        var update = BaselineUpdate.Of(library.Report, earlier, library.IsChecked, request.AcceptNew);
        var told = OutputFile.Write(request.Output, Baseline.Write(update.Entries), store, around);
        told.WriteLine($"wrote {request.Output}: {Counted.Of(update.Kept + update.Added, "finding")}{Changes(update, earlier is not null)}");
        if (update.Refused > 0)
        {
            told.WriteLine(
                $"{Counted.Of(update.Refused, "new finding")} left out: 'procscript check --baseline {request.Output}' tells them, --accept-new takes them in");
        }

        if (update.Errors > 0)
        {
            told.WriteLine($"{Counted.Of(update.Errors, "error")} left out: an error is never in a baseline, it has to be fixed");
        }

        return update.Refused == 0 && update.Errors == 0 ? ExitCode.Clean : ExitCode.Findings;
    }

    private static string Changes(BaselineUpdate update, bool isUpdate) => isUpdate ? $", {update.Dropped} dropped, {update.Added} added" : "";
}
