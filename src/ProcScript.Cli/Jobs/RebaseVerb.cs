using ProcScript.Cards;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;

namespace ProcScript.Cli.Jobs;

/// <summary><c>job rebase</c>: goes on by a newer text of the procedure.</summary>
internal static class RebaseVerb
{
    /// <summary>Says what the newer text means for the machine as it stands, and goes on by it where that is proven.</summary>
    public static async Task<ExitCode> RunAsync(EventRequest request, InputRequest library, bool isDry, Surroundings around, CancellationToken stop)
    {
        var place = JobPlace.Find(request.Job, around.CurrentFolder);
        var terminal = Terminal.For(around, request.Colour);
        var job = await EventVerb.LoadAsync(place, stop);
        var head = job.Replay.Head!;
        if (job.Replay.Closed is not null)
        {
            throw new UsageException("the job is closed.");
        }

        if (await OpenVerb.FreezeAsync(library, head.Name, head.With, terminal, around, stop) is not { } frozen)
        {
            return ExitCode.Findings;
        }

        if (frozen.Course.Plan.Revision == job.Replay.Course.Plan.Revision)
        {
            Answer.Write(terminal, ["The newer text comes to the same cards: nothing to do."]);
            return ExitCode.Clean;
        }

        var carried = Rebasing.Carry(job.Replay, frozen.Course);
        if (carried.Refusals is [_, ..])
        {
            Answer.Write(terminal, ["It cannot be carried over:", .. carried.Refusals.Select(why => $"  ! {why}"), "Go on by the cards that you have, or bring the machine to where both texts know it."]);
            return ExitCode.Findings;
        }

        var course = carried.Course!;
        var left = course.Steps.Where(step => !carried.Done.Contains(step.Number)).ToList();
        Answer.Write(terminal,
        [
            $"Revision {job.Replay.Course.Plan.Revision} to {course.Plan.Revision}: {carried.Done.Length} of {course.Steps.Length} steps are done as the machine stands, {left.Count} are left.",
            .. carried.Means.Select(meaning => $"  {meaning}"),
        ]);
        if (isDry)
        {
            return ExitCode.Clean;
        }

        var cards = NewCards.Of(job.Replay, course, carried.Done);
        TemplateFolder.Refuse(cards.Faults);
        var files = frozen.Library.Select(file => KeyValuePair.Create($"{cards.LibraryFolder}/{file.Key}", file.Value)).Concat(cards.Files);
        await place.Store.AddFilesAsync(place.Name, files.ToDictionary(StringComparer.Ordinal), stop);
        var line = await EventVerb.WriteAsync(place, cards.Told(EventVerb.New(EventKind.Rebased, request, around), cards.LibraryFolder), around, stop);
        Answer.Write(terminal, [$"{line.Line.Event.Number}  new cards", $"  {Path.Combine(request.Job, cards.PackFolder, JobPack.CardsFile)}"]);
        return ExitCode.Clean;
    }
}
