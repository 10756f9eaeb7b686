using ProcScript.Cli.Output;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Intake;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary>Who tells of an event, of which job, and when it happened.</summary>
/// <param name="Job">The job's folder.</param>
/// <param name="By">Who did it.</param>
/// <param name="At">When it happened; null for now.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record EventRequest(string Job, string By, DateTimeOffset? At, ColourChoice Colour);

/// <summary>The verbs that write down what happened on a job.</summary>
internal static class EventVerb
{
    /// <summary>Writes events, one after the other, and says of each what it means.</summary>
    /// <param name="request">Whose events they are.</param>
    /// <param name="tell">The events; what they share is put in here.</param>
    /// <param name="around">The surroundings.</param>
    /// <param name="stop">Ends the work between two events.</param>
    /// <exception cref="UsageException">One cannot have happened on this job; those before it are written.</exception>
    public static async Task<ExitCode> RunAsync(EventRequest request, IEnumerable<JobEvent> tell, Surroundings around, CancellationToken stop)
    {
        var place = JobPlace.Find(request.Job, around.CurrentFolder);
        var terminal = Terminal.For(around, request.Colour);
        var job = await LoadAsync(place, stop);
        var replay = job.Replay;
        foreach (var told in tell)
        {
            stop.ThrowIfCancellationRequested();
            var answer = EventIntake.Take(replay, told);
            var happened = answer.Event ?? throw new UsageException(answer.Refusal!);
            var known = replay.Deviations.Select(deviation => deviation.Event.Number).ToHashSet();
            var line = (await WriteAsync(place, happened, around, stop)).Line;
            replay = replay.With(line.Event);
            terminal.WriteLine(new Piece(PrintableText.Of($"{line.Event.Number}  {Said(line.Event)}")));
            Answer.Write(terminal, [.. Otherwise(replay, known), .. Unread(replay, line.Event)]);
        }

        if (replay.IsOffCourse)
        {
            Answer.Write(terminal, ["! The job has left its cards: 'procscript job refit' makes new ones from how the machine stands."]);
        }

        return ExitCode.Clean;
    }

    /// <summary>Loads a job as far as its journal holds.</summary>
    /// <exception cref="JobStoreException">It cannot be read, or what its plan was made from is not as it was.</exception>
    public static Task<LoadedJob> LoadAsync(JobPlace place, CancellationToken stop) => LoadedJob.ReadAsync(place.Store, place.Name, stop);

    /// <summary>Writes an event, with the clock of this machine beside the teller's.</summary>
    /// <exception cref="JobStoreException">It was not written.</exception>
    public static Task<AppendedLine> WriteAsync(JobPlace place, JobEvent happened, Surroundings around, CancellationToken stop) =>
        place.Store.AppendAsync(place.Name, happened with { Logged = around.Clock.GetLocalNow() }, stop);

    /// <summary>An event to be filled in.</summary>
    public static JobEvent New(EventKind kind, EventRequest request, Surroundings around) => new()
    {
        Id = Guid.NewGuid().ToString("N"),
        Kind = kind,
        At = request.At ?? around.Clock.GetLocalNow(),
        By = request.By,
    };

    /// <summary>What keeps a job from being closed, or that it is closed.</summary>
    public static async Task<ExitCode> CloseAsync(EventRequest request, string? despite, Surroundings around, CancellationToken stop)
    {
        var place = JobPlace.Find(request.Job, around.CurrentFolder);
        var terminal = Terminal.For(around, request.Colour);
        var job = await LoadAsync(place, stop);
        var open = JobClosing.Open(job.Replay);
        if (!open.IsEmpty && string.IsNullOrWhiteSpace(despite))
        {
            Answer.Write(terminal, ["It cannot be closed:", .. open.Select(one => $"  ! {one}"), "Where it has to be closed as it is, say why: --despite REASON. The record names all of this with your name."]);
            return ExitCode.Findings;
        }

        var answer = EventIntake.Take(job.Replay, New(EventKind.Closed, request, around) with { Text = open.IsEmpty ? null : despite, Despite = open.IsEmpty ? null : open });
        var line = (await WriteAsync(place, answer.Event ?? throw new UsageException(answer.Refusal!), around, stop)).Line;
        Answer.Write(terminal, [$"{line.Event.Number}  closed{(open.IsEmpty ? "" : $" although {Counted.Of(open.Length, "thing")} {(open.Length == 1 ? "is" : "are")} open")}", $"  last line {line.Hash}"]);
        return ExitCode.Clean;
    }

    private static IEnumerable<string> Otherwise(JobReplay replay, HashSet<int> known) =>
        replay.Deviations.Where(deviation => !known.Contains(deviation.Event.Number))
            .SelectMany(deviation => new[] { $"  {deviation.Text}" }.Concat(deviation.Means.Select(meaning => $"  ! {meaning}")));

    /// <summary>What is to be written down at a step that was just done, where nothing was.</summary>
    private static IEnumerable<string> Unread(JobReplay replay, JobEvent happened) =>
        happened is { Kind: EventKind.Done, Step: { } number } && replay.Course.Step(number) is { } step && JobClosing.LacksReading(replay, step)
            ? [$"  ! write down the reading: procscript job reading JOB {number} VALUE"]
            : [];

    private static string Said(JobEvent happened) => happened.Kind switch
    {
        EventKind.Done => $"step {happened.Step} done: {happened.Text}",
        EventKind.Undone when happened.Event is { } number => $"event {number} was a slip",
        EventKind.Undone => $"step {happened.Step} undone: {happened.Text}",
        EventKind.Did => $"{happened.Verb} {happened.Item}{(happened.Count is { } count ? $", {count}" : "")}",
        EventKind.Reading => $"step {happened.Step}: {happened.Value}",
        EventKind.HandOver => $"handed over to {happened.To}",
        EventKind.Bag => $"bag {happened.Bag}{(happened.Count is { } counted ? $": {counted}" : "")}{(happened.Text is { } where ? $", {where}" : "")}",
        EventKind.Missing when happened.Tool is { } tool => $"missing tool{(happened.Step is { } step ? $" at step {step}" : "")}: {tool}",
        _ => $"{happened.Kind.ToString().ToLowerInvariant()}{((happened.Item ?? happened.Text) is { } what ? $": {what}" : "")}",
    };
}
