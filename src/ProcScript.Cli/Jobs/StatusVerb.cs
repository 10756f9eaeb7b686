using System.Text.Json;
using ProcScript.Cli.Output;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Standing;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary><c>job status</c> and <c>job list</c>: how jobs stand.</summary>
internal static class StatusVerb
{
    /// <summary>How many journals are read before their jobs are told: more would only take memory.</summary>
    private const int AtOnce = 64;

    /// <summary>Tells how one job stands. A journal that is damaged is told as far as it holds, and that it is damaged.</summary>
    public static async Task<ExitCode> RunAsync(string typed, bool asText, ColourChoice colour, Surroundings around, CancellationToken stop)
    {
        var place = JobPlace.Find(typed, around.CurrentFolder);
        var job = await EventVerb.LoadAsync(place, stop);
        var status = await Task.Run(() => JobStanding.Of(job.Replay, job.LastHash), stop).WaitAsync(stop);
        if (asText)
        {
            Answer.Write(Terminal.For(around, colour), JobText.Lines(status));
        }
        else
        {
            around.Output.Write(LogCommands.DisarmJson(JsonSerializer.Serialize(status, JobJson.Published.JobStatus) + "\n"));
        }

        return Complain(place.Name, Damage(job.Journal), around) ? ExitCode.Findings : ExitCode.Clean;
    }

    /// <summary>Lists the jobs of a folder, and of those below it, from their journals alone.</summary>
    public static async Task<ExitCode> ListAsync(string typed, ColourChoice colour, Surroundings around, CancellationToken stop)
    {
        var folder = Path.GetFullPath(typed, around.CurrentFolder);
        if (!Directory.Exists(folder))
        {
            throw new UsageException($"there is no folder of jobs '{typed}'.");
        }

        FileJobStore store = new(folder);
        var terminal = Terminal.For(around, colour);
        var code = ExitCode.Clean;
        foreach (var names in (await store.ListAsync(stop)).Chunk(AtOnce))
        {
            var listed = new Listed[names.Length];
            await Parallel.ForAsync(0, names.Length, stop, async (i, end) => listed[i] = await ListedAsync(store, names[i], folder, end));
            foreach (var job in listed)
            {
                if (job.Text.Length > 0)
                {
                    terminal.WriteLine(new Piece(PrintableText.Of($"{Path.Combine(typed, job.Place)}: {job.Text}")));
                }

                code = Complain(job.Place, job.Fault, around) ? ExitCode.Findings : code;
            }
        }

        return code;
    }

    private static async Task<Listed> ListedAsync(FileJobStore store, string name, string folder, CancellationToken stop)
    {
        try
        {
            var journal = await store.ReadAsync(name, stop);
            return new Listed(Path.GetRelativePath(folder, store.FolderOf(name)), JobLine.Of(name, [.. journal.Lines.Select(line => line.Event)]) is { } line ? Told(line) : "no job", Damage(journal));
        }
        catch (JobStoreException failure)
        {
            return new Listed(name, "", failure.Message);
        }
    }

    private static string Told(JobLine line) =>
        $"{line.State}, {line.Title}, {line.Machine}, {line.Done} of {Counted.Of(line.Steps, "step")} done, {(line.Deviations > 0 ? $"{line.Deviations} not as planned, " : "")}last {JobText.At(line.LastAt)} by {line.By}";

    private static string? Damage(JournalReading journal) =>
        journal.Fault is { } fault ? $"its journal is damaged in line {fault.Line}: {fault.Problem}. What is told is what stands before that line; look at a copy." : null;

    private static bool Complain(string job, string? fault, Surroundings around)
    {
        if (fault is not null)
        {
            around.Error.WriteLine(LogCommands.DisarmLines($"procscript: '{job}': {fault}"));
        }

        return fault is not null;
    }

    /// <summary>A job in the list.</summary>
    /// <param name="Place">Where it lies below the folder that was asked for.</param>
    /// <param name="Text">How it stands; empty where nothing can be told.</param>
    /// <param name="Fault">What is wrong with it; null where nothing is.</param>
    private sealed record Listed(string Place, string Text, string? Fault);
}
