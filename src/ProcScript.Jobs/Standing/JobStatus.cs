using System.Collections.Immutable;

namespace ProcScript.Jobs.Standing;

/// <summary>How a job stands. Times are points in time, or in seconds.</summary>
public sealed record JobStatus
{
    /// <summary>The version of this document's form.</summary>
    public string Format { get; init; } = "1";

    /// <summary>The job.</summary>
    public required string Job { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>What people call the machine.</summary>
    public required string Machine { get; init; }

    /// <summary>Which machine it is.</summary>
    public required string Serial { get; init; }

    /// <summary>The work order.</summary>
    public required string Order { get; init; }

    /// <summary><c>open</c>, <c>paused</c> or <c>closed</c>.</summary>
    public required string State { get; init; }

    /// <summary>The last event's number.</summary>
    public required int Events { get; init; }

    /// <summary>When the last event happened; null where there is none.</summary>
    public required DateTimeOffset? LastAt { get; init; }

    /// <summary>The hash of the last line of the journal.</summary>
    public required string LastHash { get; init; }

    /// <summary>The revision of the cards that are worked from.</summary>
    public required string Plan { get; init; }

    /// <summary>How many of their steps are done.</summary>
    public required int Done { get; init; }

    /// <summary>How many there are.</summary>
    public required int Steps { get; init; }

    /// <summary>What is not as on the whole machine.</summary>
    public required ImmutableArray<StatusLine> Open { get; init; }

    /// <summary>What can hurt somebody as the machine stands.</summary>
    public required ImmutableArray<string> Unsafe { get; init; }

    /// <summary>What is open, and was closed over.</summary>
    public required ImmutableArray<string> Hidden { get; init; }

    /// <summary>What the bags hold.</summary>
    public required ImmutableArray<StatusBag> Bags { get; init; }

    /// <summary>Pieces that are left over, missing or broken.</summary>
    public required ImmutableArray<string> Pieces { get; init; }

    /// <summary>The steps that may be done now.</summary>
    public required ImmutableArray<StatusStep> Next { get; init; }

    /// <summary>Whether the job has left its cards, so that they have to be made anew before anybody goes on by them.</summary>
    public required bool NeedsNewCards { get; init; }

    /// <summary>Why the newest cards cannot be followed; empty where they can.</summary>
    public required string Unfollowed { get; init; }

    /// <summary>What happened otherwise than planned.</summary>
    public required ImmutableArray<StatusDeviation> Deviations { get; init; }

    /// <summary>What came out and went in of fluids.</summary>
    public required ImmutableArray<Closing.FluidBalance> Fluids { get; init; }

    /// <summary>What keeps it from being closed.</summary>
    public required ImmutableArray<string> BeforeClosing { get; init; }

    /// <summary>The shortest proven way back that was found; null where the machine is whole, or none was found.</summary>
    public required StatusBack? Back { get; init; }
}

/// <summary>Something that is not as on the whole machine.</summary>
/// <param name="Item">The item's name in the sources.</param>
/// <param name="Sort"><c>energy</c>, <c>part</c>, <c>joint</c>, <c>fluid</c>, <c>prop</c>, <c>cap</c>, <c>temporary</c> or <c>control</c>.</param>
/// <param name="Title">What people call it.</param>
/// <param name="State">How it stands.</param>
/// <param name="Where">Where it lies, where that was said; else empty.</param>
public sealed record StatusLine(string Item, string Sort, string Title, string State, string Where);

/// <summary>A bag that is not empty.</summary>
/// <param name="Number">The bag.</param>
/// <param name="Count">How many pieces it holds.</param>
/// <param name="Contents">What they are.</param>
/// <param name="Where">Where it lies, where that was said; else empty.</param>
public sealed record StatusBag(int Number, int Count, ImmutableArray<string> Contents, string Where);

/// <summary>A step.</summary>
/// <param name="Number">The number.</param>
/// <param name="Card">The title of its card.</param>
/// <param name="Text">What it says.</param>
/// <param name="NotBefore">When what has to cure first will have; null where nothing has to.</param>
public sealed record StatusStep(int Number, string Card, string Text, DateTimeOffset? NotBefore);

/// <summary>Something that happened otherwise than planned.</summary>
/// <param name="Event">The number of the event.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="Text">What.</param>
/// <param name="Means">What that means.</param>
public sealed record StatusDeviation(int Event, DateTimeOffset At, string By, string Text, ImmutableArray<string> Means)
{
    /// <summary>All of a job.</summary>
    /// <param name="replay">The job.</param>
    public static ImmutableArray<StatusDeviation> Of(Replays.JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return [.. replay.Deviations.Select(one => new StatusDeviation(one.Event.Number, one.Event.At, one.Event.By, one.Text, one.Means))];
    }
}

/// <summary>A way back.</summary>
/// <param name="Again">How many steps have to be opened again first.</param>
/// <param name="Steps">How many steps it takes in all.</param>
/// <param name="Seconds">How long it takes one person.</param>
/// <param name="First">Its first steps.</param>
public sealed record StatusBack(int Again, int Steps, double Seconds, ImmutableArray<string> First);
