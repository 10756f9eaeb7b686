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

        return Complain(place.Name, job.Journal, around) ? ExitCode.Findings : ExitCode.Clean;
    }

    /// <summary>Lists the jobs of a folder, from their journals alone.</summary>
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
        foreach (var name in await store.ListAsync(stop))
        {
            stop.ThrowIfCancellationRequested();
            var journal = await store.ReadAsync(name, stop);
            terminal.WriteLine(new Piece(PrintableText.Of($"{Path.Combine(typed, name)}: {Told(journal)}")));
            code = Complain(name, journal, around) ? ExitCode.Findings : code;
        }

        return code;
    }

    private static string Told(JournalReading journal)
    {
        if (journal.Lines is not [{ Event.Job: { } head }, .., ] lines)
        {
            return "no job";
        }

        var last = lines[^1].Event;
        var state = lines.Any(line => line.Event.Kind == EventKind.Closed) ? "closed" : last.Kind is EventKind.Pause or EventKind.HandOver ? "paused" : "open";
        var steps = lines.Count(line => line.Event.Kind == EventKind.Done);
        return $"{state}, {head.Title}, {head.MachineTitle}, {Counted.Of(steps, "step")} ticked, last {JobText.At(last.At)} by {last.By}";
    }

    private static bool Complain(string name, JournalReading journal, Surroundings around)
    {
        if (journal.Fault is { } fault)
        {
            around.Error.WriteLine(LogCommands.DisarmLines(
                $"procscript: the journal of '{name}' is damaged in line {fault.Line}: {fault.Problem}. What is told is what stands before that line; look at a copy."));
            return true;
        }

        return false;
    }
}
