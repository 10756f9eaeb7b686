using System.Collections.Immutable;
using System.Security.Cryptography;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Jobs.Standing;

/// <summary>A job as it was done: what its report prints.</summary>
public sealed record JobRecord
{
    /// <summary>The plan that was worked from last.</summary>
    public required Analysis.Plans.Plan Plan { get; init; }

    /// <summary>What job it is.</summary>
    public required JobHead Head { get; init; }

    /// <summary>When it was opened, and by whom.</summary>
    public required RecordLine Opened { get; init; }

    /// <summary>When it was closed, by whom and why in spite of what; null while it is open.</summary>
    public required RecordLine? Closed { get; init; }

    /// <summary>What was open when it was closed, or, while it is open, what keeps it from being closed.</summary>
    public required ImmutableArray<string> Open { get; init; }

    /// <summary>Who worked on it, in the order of their first events.</summary>
    public required ImmutableArray<string> People { get; init; }

    /// <summary>What was done, in the order in which it was written down.</summary>
    public required ImmutableArray<RecordLine> Steps { get; init; }

    /// <summary>The readings.</summary>
    public required ImmutableArray<RecordReading> Readings { get; init; }

    /// <summary>What came out and went in of fluids.</summary>
    public required ImmutableArray<FluidBalance> Fluids { get; init; }

    /// <summary>What happened otherwise than planned.</summary>
    public required ImmutableArray<StatusDeviation> Deviations { get; init; }

    /// <summary>Notes, pauses, hand-overs, signatures.</summary>
    public required ImmutableArray<RecordLine> Notes { get; init; }

    /// <summary>The photos.</summary>
    public required ImmutableArray<RecordPhoto> Photos { get; init; }

    /// <summary>What is due after the job.</summary>
    public required ImmutableArray<string> FollowUps { get; init; }

    /// <summary>How many lines the journal has.</summary>
    public required int Lines { get; init; }

    /// <summary>The hash of its last line.</summary>
    public required string LastHash { get; init; }

    /// <summary>What is wrong with the journal; empty where nothing is.</summary>
    public required string Damage { get; init; }

    /// <summary>Gathers the record of a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="photos">Its photos, by their paths.</param>
    public static JobRecord Of(LoadedJob job, IReadOnlyDictionary<string, byte[]> photos)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(photos);
        var replay = job.Replay;
        var told = replay.WithoutSlips.ToList();
        return new JobRecord
        {
            Plan = replay.Course.Plan,
            Head = replay.Head!,
            Opened = Line(replay.Events[0], ""),
            Closed = replay.Closed is { } closed ? Line(closed, closed.Text ?? "") : null,
            Open = replay.Closed is { } end ? end.Despite ?? [] : JobClosing.Open(replay),
            People = [.. told.Select(happened => happened.By).Distinct(StringComparer.Ordinal)],
            Steps = [.. told.Where(happened => happened.Kind is EventKind.Done or EventKind.Undone or EventKind.Did or EventKind.Replanned or EventKind.Rebased).Select(happened => Line(happened, Said(happened)))],
            Readings = [.. replay.Readings.Select(reading => new RecordReading(Line(reading.Event, reading.Text), reading.Value, reading.Limits, reading.Verdict == Replays.ReadingVerdict.Good))],
            Fluids = [.. FluidBalance.Of(replay)],
            Deviations = StatusDeviation.Of(replay),
            Notes = [.. told.Where(happened => happened.Kind is EventKind.Note or EventKind.Pause or EventKind.Resume or EventKind.HandOver or EventKind.Sign).Select(happened => Line(happened, Said(happened)))],
            Photos = [.. told.Where(happened => happened is { Kind: EventKind.Photo, File: not null }).Select(happened => Photo(happened, photos))],
            FollowUps = [.. replay.Course.Plan.FollowUps.Select(due => $"{due.Text}: {due.When}")],
            Lines = job.Journal.Lines.Length,
            LastHash = job.LastHash,
            Damage = job.Journal.Fault is { } fault ? $"The journal is damaged in line {fault.Line}: {fault.Problem}. What is printed stands before that line." : "",
        };
    }

    private static RecordLine Line(JobEvent happened, string text) => new(happened.Number, happened.Step ?? 0, happened.At, happened.By, text);

    private static RecordPhoto Photo(JobEvent happened, IReadOnlyDictionary<string, byte[]> photos)
    {
        var content = photos.GetValueOrDefault(happened.File!);
        var state = content is null ? "the file is gone"
            : Convert.ToHexStringLower(SHA256.HashData(content)) != happened.FileHash ? "the file is not the one that was taken: it was changed"
            : "";
        return new RecordPhoto(Line(happened, happened.Text ?? ""), happened.File!, state.Length == 0 ? [.. content!] : [], state);
    }

    private static string Said(JobEvent happened) => happened.Kind switch
    {
        EventKind.Undone when happened.Event is { } slip => $"event {slip} was a slip",
        EventKind.Undone => $"undone again: {happened.Text}",
        EventKind.Did => $"{happened.Verb} {happened.Item}{(happened.Count is { } count ? $", {count}" : "")} (no step of the cards)",
        EventKind.Replanned => $"new cards from how the machine stood, revision {happened.Plan}",
        EventKind.Rebased => $"new cards by a newer text, revision {happened.Plan}",
        EventKind.Pause => $"stopped{Of(happened.Text)}",
        EventKind.Resume => $"went on{Of(happened.Text)}",
        EventKind.HandOver => $"handed over to {happened.To}{Of(happened.Text)}",
        EventKind.Sign => $"signed{(happened.Step is { } step ? $" for step {step}" : "")}{Of(happened.Text)}",
        _ => happened.Text ?? "",
    };

    private static string Of(string? text) => string.IsNullOrEmpty(text) ? "" : $": {text}";
}

/// <summary>A line of the record.</summary>
/// <param name="Event">The number of its event.</param>
/// <param name="Step">The step; 0 where it belongs to none.</param>
/// <param name="At">When it happened.</param>
/// <param name="By">Who did it.</param>
/// <param name="Text">What.</param>
public sealed record RecordLine(int Event, int Step, DateTimeOffset At, string By, string Text);

/// <summary>A reading.</summary>
/// <param name="Line">Of what, when and by whom.</param>
/// <param name="Value">What was read.</param>
/// <param name="Limits">What it must be; empty where it may be anything.</param>
/// <param name="IsGood">Whether it is.</param>
public sealed record RecordReading(RecordLine Line, string Value, string Limits, bool IsGood);

/// <summary>A photo.</summary>
/// <param name="Line">What it shows, when and by whom it was taken.</param>
/// <param name="File">Its file in the job's folder.</param>
/// <param name="Content">The picture; empty where it is not to be shown.</param>
/// <param name="Problem">Why not; empty where it is.</param>
public sealed record RecordPhoto(RecordLine Line, string File, ImmutableArray<byte> Content, string Problem);
