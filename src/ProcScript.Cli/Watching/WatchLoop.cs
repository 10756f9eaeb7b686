using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Watching;

/// <summary>Does something, and again whenever the library changes, until it is stopped.</summary>
internal static class WatchLoop
{
    /// <summary>Runs until it is stopped, which is no failure.</summary>
    /// <param name="input">What to watch.</param>
    /// <param name="other">Another folder to watch, as a full path, or null.</param>
    /// <param name="run">What to do.</param>
    /// <param name="around">The run.</param>
    /// <param name="stop">Ends it.</param>
    public static async Task<ExitCode> RunAsync(InputRequest input, string? other, Func<Task> run, Surroundings around, CancellationToken stop)
    {
        var selection = SourceSelection.Find(input, around.CurrentFolder);
        if (selection.StandardInput is not null)
        {
            throw new UsageException("the standard input cannot be watched: --watch is for files and folders.");
        }

        using FolderWatch watch = new(selection.Root, other);
        try
        {
            while (true)
            {
                await RunAsync(run, around);
                await watch.ChangedAsync(stop);
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return ExitCode.Clean;
        }
    }

    private static async Task RunAsync(Func<Task> run, Surroundings around)
    {
        try
        {
            await run();
        }
        catch (UsageException failure)
        {
            // A file that is just being moved about is there again in the next run.
            around.Error.WriteLine(LogCommands.DisarmLines($"procscript: {failure.Message}"));
        }

        around.Output.WriteLine("watching for changes; Ctrl-C ends it");
        await around.Output.FlushAsync(CancellationToken.None);
        await around.Error.FlushAsync(CancellationToken.None);
    }
}
