using ProcScript.Cards;
using ProcScript.Cli.Output;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Journals;

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

        var cards = NewCards.Of(job.Replay, course, course.Done);
        TemplateFolder.Refuse(cards.Faults);
        await place.Store.AddFilesAsync(place.Name, cards.Files, stop);
        var line = await EventVerb.WriteAsync(place, cards.Told(EventVerb.New(EventKind.Replanned, request, around), cards.PackFolder), around, stop);
        Answer.Write(terminal,
        [
            $"{line.Line.Event.Number}  new cards of revision {course.Plan.Revision}: {Counted.Of(cards.Left, "step")} left{(course.Again.IsEmpty ? "" : $", {course.Again.Length} of them to open again what was closed too early")}",
            $"  {Path.Combine(request.Job, cards.PackFolder, JobPack.CardsFile)}",
            .. course.LeftOut.Select(text => $"  ! left out, since it asks for what is not so on this way: {text}"),
            .. JobClosing.OfPaper(job.Replay).Select(text => $"  ! not written down before these cards: {text}"),
            .. job.Replay.Machine.Unsafe().Select(text => $"  ! {text}"),
        ]);
        return ExitCode.Clean;
    }
}
