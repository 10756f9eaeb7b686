using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Intake;

/// <summary>
/// Looks at an event before it is written. What cannot have happened on this job is refused: a step that no card has, an item that the machine
/// does not have. What was not planned is no reason to refuse: it happened.
/// </summary>
public static class EventIntake
{
    /// <summary>The most letters of a text.</summary>
    public const int LongestText = 4_000;

    /// <summary>The most letters of a name or a value.</summary>
    public const int LongestName = 200;

    /// <summary>The most pieces that anybody can mean.</summary>
    public const int MostPieces = 100_000;

    private static readonly TimeSpan Ahead = TimeSpan.FromDays(3660);

    /// <summary>Looks at an event, and says in its line what its step or item is.</summary>
    /// <param name="replay">The job so far.</param>
    /// <param name="happened">The event as it was told.</param>
    /// <param name="isLate">
    /// Whether it may have happened before others that are written already, told by somebody who was out of reach: that a step was done counts once,
    /// and who says so besides is not called wrong.
    /// </param>
    public static IntakeAnswer Take(JobReplay replay, JobEvent happened, bool isLate = false)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(happened);
        if (Form(happened) is { } malformed)
        {
            return new IntakeAnswer(null, malformed);
        }

        if (replay.Closed is { } closed && happened.Kind != EventKind.Note)
        {
            return new IntakeAnswer(null, $"the job was closed by {closed.By} on {closed.At:yyyy-MM-dd}: nothing can happen on it any more but notes.");
        }

        var told = happened with { Plan = happened.Plan ?? replay.Course.Plan.Revision };
        return Refusal(replay, told, isLate) is { } why ? new IntakeAnswer(null, why) : new IntakeAnswer(Filled(replay, told), null);
    }

    private static string? Form(JobEvent happened) =>
        happened.Id.Length is 0 or > LongestName ? "an event needs an identity of at most 200 letters."
        : happened.By.Trim().Length is 0 or > LongestName ? "say who did it."
        : happened.Kind is EventKind.Opened or EventKind.Replanned or EventKind.Rebased && happened.File is null ? "that is told by the program alone."
        : happened.Text?.Length > LongestText ? $"the text has {happened.Text.Length} letters; {LongestText} is the most."
        : new[] { happened.Value, happened.To, happened.Item, happened.Tool, happened.Verb, happened.Position, happened.File, happened.Plan }.Any(text => text?.Length > LongestName) ? "a name or a value has at most 200 letters."
        : happened.Count is < 0 or > MostPieces ? $"{happened.Count} pieces cannot be."
        : happened.At < DateTimeOffset.UnixEpoch || happened.At - DateTimeOffset.UnixEpoch > TimeSpan.FromDays(365 * 200) + Ahead ? $"{happened.At:yyyy-MM-dd} cannot be the day."
        : null;

    private static string? Refusal(JobReplay replay, JobEvent told, bool isLate) => told.Kind switch
    {
        EventKind.Done => StepRefusal(replay, told) ?? (!isLate && replay.Done.TryGetValue(told.Step!.Value, out var done)
            ? done.Event is { } before ? $"step {told.Step} was done by {before.By} on {before.At:yyyy-MM-dd HH:mm} already." : $"step {told.Step} was done already when these cards were made."
            : null),
        EventKind.Undone when told.Event is { } number => EventRefusal(replay, number),
        EventKind.Undone => StepRefusal(replay, told) ?? (replay.Done.ContainsKey(told.Step!.Value) ? null : $"step {told.Step} is not done, so that it cannot be undone."),
        EventKind.Did => DidRefusal(replay, told),
        EventKind.Reading => StepRefusal(replay, told) ?? (string.IsNullOrWhiteSpace(told.Value) ? "say what was read." : null),
        EventKind.Photo => told.File is null || told.FileHash is null ? "a photo needs its file." : told.Step is null ? null : StepRefusal(replay, told),
        EventKind.Note => string.IsNullOrWhiteSpace(told.Text) ? "say what is to be noted." : told.Step is null ? null : StepRefusal(replay, told),
        EventKind.Missing when told.Tool is not null => ToolRefusal(replay, told),
        EventKind.Broke or EventKind.Missing or EventKind.Found => PiecesRefusal(replay, told),
        EventKind.Bag => told.Bag is not { } bag ? "say which bag." : BagRefusal(replay, bag)
            ?? (told.Count is null && string.IsNullOrWhiteSpace(told.Text) ? "say how many pieces it holds, or where it lies." : null),
        EventKind.HandOver => string.IsNullOrWhiteSpace(told.To) ? "say to whom." : null,
        EventKind.Pause => replay.Paused is { } since ? $"the work has stopped already, since {since.At:yyyy-MM-dd HH:mm}." : null,
        EventKind.Resume => replay.Paused is null ? "the work has not stopped, so that nobody can go on with it." : null,
        EventKind.Sign => told.Step is null ? null : StepRefusal(replay, told),
        EventKind.Opened => "a job is opened once.",
        _ => null,
    };

    private static string? StepRefusal(JobReplay replay, JobEvent told) =>
        told.Step is not { } number ? "say which step."
        : told.Plan != replay.Course.Plan.Revision ? $"that is step {number} of the cards of revision {told.Plan}; the job follows revision {replay.Course.Plan.Revision} now. Take the new cards."
        : replay.Course.Step(number) is null ? $"there is no step {number}: the cards go from 1 to {replay.Course.Steps.Length}."
        : null;

    private static string? EventRefusal(JobReplay replay, int number) =>
        number < 2 || number > replay.Events.Count ? $"there is no event {number} that could be a slip: the journal goes from 2 to {replay.Events.Count}."
        : replay.Slips.Contains(number) ? $"event {number} counts for nothing already."
        : replay.Events[number - 1].Kind is EventKind.Closed or EventKind.Replanned or EventKind.Rebased ? $"event {number} made new cards or closed the job: what came after it stands on it."
        : replay.Events.Skip(number).Any(later => later.Kind is EventKind.Replanned or EventKind.Rebased) ? $"new cards were made after event {number}, from how the machine stood: say what is so now instead."
        : null;

    private static string? DidRefusal(JobReplay replay, JobEvent told)
    {
        if (told.Verb is not { } word || TrueMachine.VerbOf(word) is not { } verb)
        {
            return $"`{told.Verb}` is no verb that changes a machine.";
        }

        if (ItemRefusal(replay, told.Item) is { } unknown)
        {
            return unknown;
        }

        var item = replay.Course.Machine.Items[told.Item!];
        return !TrueMachine.Suits(verb, item) ? $"nobody can {word} `{item.Name}`: {TrueMachine.Title(item)} is {SortOf(item)}."
            : item is Control control && !control.Positions.Contains(told.Position ?? "") ? $"`{item.Name}` has the positions {string.Join(", ", control.Positions)}."
            : null;
    }

    private static string? ToolRefusal(JobReplay replay, JobEvent told) =>
        string.IsNullOrWhiteSpace(told.Tool) ? "say which tool."
        : told.Item is not null || told.Bag is not null ? "a missing tool is no piece of the machine: say either the tool or the item."
        : told.Step is null ? null : StepRefusal(replay, told);

    private static string? PiecesRefusal(JobReplay replay, JobEvent told) =>
        told.Count == 0 ? "say how many, from one."
        : told.Bag is { } bag && BagRefusal(replay, bag) is { } noBag ? noBag
        : told.Item is null ? string.IsNullOrWhiteSpace(told.Text) ? "say what." : null
        : ItemRefusal(replay, told.Item);

    private static string? BagRefusal(JobReplay replay, int bag) =>
        replay.Course.Plan.Bags.Any(one => one.Number == bag) ? null : $"the job has no bag {bag}.";

    private static string? ItemRefusal(JobReplay replay, string? name)
    {
        if (name is null)
        {
            return "say what it was done to.";
        }

        if (replay.Course.Machine.Items.ContainsKey(name))
        {
            return null;
        }

        var near = new NearNames(replay.Course.Machine.Items.Keys).Find(name);
        return $"the machine has no `{name}`{(near.IsEmpty ? "." : $"; did you mean {string.Join(" or ", near.Select(one => $"`{one}`"))}?")}";
    }

    private static string SortOf(MachineItem item) => item switch
    {
        Part => "a part",
        Energy => "an energy",
        Fluid => "a fluid",
        Control => "a control",
        Joint joint => $"a joint, held by {joint.Kind.Title}",
        _ => "nothing of the kind",
    };

    /// <summary>The event with all that its step says: its line has to be understood without the cards.</summary>
    private static JobEvent Filled(JobReplay replay, JobEvent told)
    {
        if (told.Step is not { } number || told.Plan != replay.Course.Plan.Revision || replay.Course.Step(number) is not { } step)
        {
            return told;
        }

        return told.Kind is EventKind.Done or EventKind.Undone
            ? told with
            {
                Verb = step.Line.Verb,
                Item = step.Line.Item.Length > 0 ? step.Line.Item : null,
                Count = told.Count ?? (step.Count > 0 ? step.Count : null),
                Position = step.Line.Position.Length > 0 ? step.Line.Position : null,
                Text = told.Text ?? step.Line.Text,
            }
            : told.Kind == EventKind.Reading ? told with { Text = told.Text ?? step.Line.Reading?.Text ?? step.Line.Text }
            : told;
    }
}

/// <summary>What came of looking at an event.</summary>
/// <param name="Event">The event as it is to be written; null where it is refused.</param>
/// <param name="Refusal">Why it is refused; null where it is not.</param>
public sealed record IntakeAnswer(JobEvent? Event, string? Refusal);
