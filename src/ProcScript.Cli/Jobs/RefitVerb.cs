using System.Security.Cryptography;
using System.Text;
using ProcScript.Analysis.Following;
using ProcScript.Cards;
using ProcScript.Cli.Output;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary><c>job refit</c>: new cards from how the machine truly stands.</summary>
internal static class RefitVerb
{
    /// <summary>Derives the refit, proves it, writes its cards and goes on by them.</summary>
    public static async Task<ExitCode> RunAsync(EventRequest request, Surroundings around, CancellationToken stop)
    {
        var place = JobPlace.Find(request.Job, around.CurrentFolder);
        var terminal = Terminal.For(around, request.Colour);
        var job = await EventVerb.LoadAsync(place, stop);
        if (job.Replay.Closed is not null)
        {
            throw new UsageException("the job is closed.");
        }

        var course = await Task.Run(job.Replay.Machine.WayHome, stop).WaitAsync(stop);
        if (course is null)
        {
            Answer.Write(terminal,
            [
                "No refit was found that is proven from how the machine stands.",
                .. job.Replay.Machine.NotWhole().Select(open => $"  {open.Title}: {open.State}"),
                "Bring the machine to where a card ends, tell of it, and ask again.",
            ]);
            return ExitCode.Findings;
        }

        var folder = await WritePackAsync(place, job, course, stop);
        var line = await EventVerb.WriteAsync(place, Event(request, around, EventKind.Replanned, folder, course), around, stop);
        var left = course.Steps.Length - course.Done.Length;
        Answer.Write(terminal,
        [
            $"{line.Line.Event.Number}  new cards of revision {course.Plan.Revision}: {Counted.Of(left, "step")} left{(course.Again.IsEmpty ? "" : $", {course.Again.Length} of them to open again what was closed too early")}",
            $"  {Path.Combine(request.Job, folder, JobPack.CardsFile)}",
            .. course.LeftOut.Select(text => $"  ! left out, since it asks for what is not so on this way: {text}"),
            .. JobClosing.OfPaper(job.Replay).Select(text => $"  ! not written down before these cards: {text}"),
            .. job.Replay.Machine.Unsafe().Select(text => $"  ! {text}"),
        ]);
        return ExitCode.Clean;
    }

    /// <summary>Freezes the cards of a new course beside the earlier ones, and says where.</summary>
    /// <exception cref="UsageException">They cannot be written.</exception>
    public static async Task<string> WritePackAsync(JobPlace place, LoadedJob job, JobCourse course, CancellationToken stop, IReadOnlyDictionary<string, byte[]>? more = null)
    {
        var number = 2 + job.Replay.Events.Count(happened => happened.Kind is EventKind.Replanned or EventKind.Rebased);
        var folder = $"{LoadedJob.PackFolder}-{number}";
        var files = JobPack.Files(course.Plan, PackTemplates.Standard, course.Settings, out var faults).ToDictionary(file => $"{folder}/{file.Key}", file => file.Value, StringComparer.Ordinal);
        TemplateFolder.Refuse(faults);
        foreach (var (path, content) in more ?? new Dictionary<string, byte[]>())
        {
            files[path] = content;
        }

        try
        {
            await place.Store.AddFilesAsync(place.Name, files, stop);
            return folder;
        }
        catch (JobStoreException failure)
        {
            throw new UsageException(failure.Message);
        }
    }

    /// <summary>The event that says that the job goes on by a new course.</summary>
    public static JobEvent Event(EventRequest request, Surroundings around, EventKind kind, string file, JobCourse course) => EventVerb.New(kind, request, around) with
    {
        Plan = course.Plan.Revision,
        File = file,
        FileHash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(WorkPack.Json(course.Plan)))),
    };
}
