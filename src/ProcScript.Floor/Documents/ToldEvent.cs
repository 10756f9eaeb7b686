using System.Collections.Immutable;
using ProcScript.Jobs.Journals;

namespace ProcScript.Floor.Documents;

/// <summary>Events as a tablet tells them.</summary>
/// <param name="Events">The events, in the order in which they happened there.</param>
public sealed record ToldEvents(ImmutableArray<ToldEvent> Events)
{
    /// <summary>The most that are taken at once.</summary>
    public const int Most = 200;
}

/// <summary>An event as a tablet tells it: what <see cref="JobEvent"/> has, but for what the journal's keeper puts in.</summary>
public sealed record ToldEvent
{
    /// <summary>Made up by the tablet, and never used twice.</summary>
    public required string Id { get; init; }

    /// <summary>What it is.</summary>
    public required EventKind Kind { get; init; }

    /// <summary>When it happened, by the clock of the tablet.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Who did it.</summary>
    public required string By { get; init; }

    /// <summary>The revision of the plan that step and bag numbers are of.</summary>
    public string? Plan { get; init; }

    /// <summary>The step.</summary>
    public int? Step { get; init; }

    /// <summary>The verb.</summary>
    public string? Verb { get; init; }

    /// <summary>The item's name.</summary>
    public string? Item { get; init; }

    /// <summary>A tool that was missing.</summary>
    public string? Tool { get; init; }

    /// <summary>How many pieces.</summary>
    public int? Count { get; init; }

    /// <summary>Of a control, the position.</summary>
    public string? Position { get; init; }

    /// <summary>Of an undone event, its number.</summary>
    public int? Event { get; init; }

    /// <summary>The bag.</summary>
    public int? Bag { get; init; }

    /// <summary>What was read.</summary>
    public string? Value { get; init; }

    /// <summary>A photo that has been sent.</summary>
    public string? File { get; init; }

    /// <summary>The hash of that photo.</summary>
    public string? FileHash { get; init; }

    /// <summary>To whom the work is handed over.</summary>
    public string? To { get; init; }

    /// <summary>Words.</summary>
    public string? Text { get; init; }

    /// <summary>Of a job that is closed although something is open: what whoever closes it has seen.</summary>
    public ImmutableArray<string>? Despite { get; init; }

    /// <summary>The event of a journal.</summary>
    /// <param name="logged">When it was told.</param>
    public JobEvent Of(DateTimeOffset logged) => new()
    {
        Id = Id,
        Kind = Kind,
        At = At,
        Logged = logged,
        By = By.Trim(),
        Plan = Plan,
        Step = Step,
        Verb = Verb,
        Item = Item,
        Tool = Tool,
        Count = Count,
        Position = Position,
        Event = Event,
        Bag = Bag,
        Value = Value,
        File = File,
        FileHash = FileHash,
        To = To,
        Text = Text,
        Despite = Despite,
    };
}

/// <summary>What became of events, in their order.</summary>
/// <param name="Answers">One for each.</param>
/// <param name="Now">How the job stands after them.</param>
public sealed record EventAnswers(ImmutableArray<EventAnswer> Answers, JobNow Now);

/// <summary>What became of an event.</summary>
/// <param name="Id">Its identity.</param>
/// <param name="Number">Its number in the journal; 0 where it is refused.</param>
/// <param name="Hash">The hash of its line; empty where it is refused.</param>
/// <param name="WasThere">Whether it had been written before.</param>
/// <param name="Refusal">Why it is refused; null where it is not.</param>
public sealed record EventAnswer(string Id, int Number, string Hash, bool WasThere, string? Refusal);

/// <summary>A part of a journal.</summary>
/// <param name="Events">Its events.</param>
/// <param name="Last">The number of the last event of the whole journal.</param>
public sealed record JournalPart(ImmutableArray<JobEvent> Events, int Last);
