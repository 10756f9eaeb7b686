using System.Collections.Immutable;

namespace ProcScript.Jobs.Journals;

/// <summary>
/// One thing that happened on a job: a line of its journal. Every line says all that it means by itself, so that it can be read without the
/// plan. What has no meaning for its kind is left out.
/// </summary>
public sealed record JobEvent
{
    /// <summary>Its place in the journal, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Told by whoever sends it, and never told twice: the same event sent again is one event.</summary>
    public required string Id { get; init; }

    /// <summary>What it is.</summary>
    public required EventKind Kind { get; init; }

    /// <summary>When it happened, by the clock of who tells it.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>When it was written down, by the clock of the journal's keeper.</summary>
    public DateTimeOffset Logged { get; init; }

    /// <summary>Who did it.</summary>
    public required string By { get; init; }

    /// <summary>The revision of the plan that step and bag numbers are of.</summary>
    public string? Plan { get; init; }

    /// <summary>The step, as cards number it.</summary>
    public int? Step { get; init; }

    /// <summary>The verb's word in the language.</summary>
    public string? Verb { get; init; }

    /// <summary>The item's name in the sources.</summary>
    public string? Item { get; init; }

    /// <summary>Of a tool that was missing, its name in the sources, or what it is.</summary>
    public string? Tool { get; init; }

    /// <summary>How many pieces; of new cards, how many of their steps are left to do.</summary>
    public int? Count { get; init; }

    /// <summary>Of a control, the position.</summary>
    public string? Position { get; init; }

    /// <summary>Of an undone event, its number.</summary>
    public int? Event { get; init; }

    /// <summary>The bag.</summary>
    public int? Bag { get; init; }

    /// <summary>What was read, as it was written down: <c>12.6 V</c>.</summary>
    public string? Value { get; init; }

    /// <summary>A file of the job's folder, such as a photo or a plan; <c>/</c> between folders.</summary>
    public string? File { get; init; }

    /// <summary>The SHA-256 of that file, in lower-case hexadecimal digits.</summary>
    public string? FileHash { get; init; }

    /// <summary>To whom the work is handed over.</summary>
    public string? To { get; init; }

    /// <summary>Words: what the note says, the photo shows, is signed for, or why the work stops.</summary>
    public string? Text { get; init; }

    /// <summary>Of a job that is closed although something is open: what was open, each in words.</summary>
    public ImmutableArray<string>? Despite { get; init; }

    /// <summary>Of the first event, what job it is.</summary>
    public JobHead? Job { get; init; }

    /// <summary>The hash of the line before; 64 zeros on the first.</summary>
    public string Previous { get; init; } = "";

    /// <summary>The numbers of the events that are said to be slips: they never were.</summary>
    /// <param name="events">The events of a journal.</param>
    public static HashSet<int> SlipsOf(IEnumerable<JobEvent> events) =>
        [.. events.Where(happened => happened is { Kind: EventKind.Undone, Event: not null }).Select(happened => happened.Event!.Value)];
}

/// <summary>What job a journal is of.</summary>
/// <param name="Format">The version of the journal's form.</param>
/// <param name="Name">The job: the procedure's name with its arguments behind hyphens.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Machine">The machine's name in the sources.</param>
/// <param name="MachineTitle">What people call the machine.</param>
/// <param name="Serial">Which machine it is: its serial number or the like.</param>
/// <param name="Order">The work order.</param>
/// <param name="With">The options that the machine has.</param>
/// <param name="Revision">The revision of the plan.</param>
/// <param name="Steps">How many steps the plan has.</param>
/// <param name="Program">The version of the program that froze the plan.</param>
public sealed record JobHead(
    string Format,
    string Name,
    string Title,
    string Machine,
    string MachineTitle,
    string Serial,
    string Order,
    ImmutableArray<string> With,
    string Revision,
    int Steps,
    string Program);
