using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Standing;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Closing;

/// <summary>Says what keeps a job from being closed.</summary>
public static class JobClosing
{
    /// <summary>What is open still, each in words; a job without any may be closed.</summary>
    /// <param name="replay">The job.</param>
    public static ImmutableArray<string> Open(JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return Open(replay, StandingFacts.Of(replay));
    }

    /// <summary>The same, of facts that are known.</summary>
    internal static ImmutableArray<string> Open(JobReplay replay, StandingFacts facts) => [.. All(replay, facts).Distinct(StringComparer.Ordinal)];

    /// <summary>The pieces that are left over, missing or broken.</summary>
    internal static IEnumerable<string> Pieces(JobReplay replay) =>
    [
        .. replay.Extra.Select(extra => $"{Pieces(replay, extra.Key, extra.Value)} left over"),
        .. replay.Lost.Where(lost => !IsWhole(replay, lost.Key)).Select(lost => $"{Pieces(replay, lost.Key, lost.Value)} missing"),
        .. replay.Broken.Where(broken => !IsWhole(replay, broken.Key)).Select(broken => $"{Pieces(replay, broken.Key, broken.Value)} broke, and no new one is in"),
    ];

    private static IEnumerable<string> All(JobReplay replay, StandingFacts facts) =>
    [
        .. facts.NotWhole.Select(open => $"{open.Thing.Title}: {open.State}"),
        .. facts.Unsafe,
        .. facts.Bags.Select(bag => $"bag {bag.Number} holds {string.Join(", ", bag.Lines.Select(line => $"{line.Count} × {line.Title} ({line.From})"))}"),
        .. facts.Pieces,
        .. NotDone(replay),
        .. OfPaper(replay),
        .. replay.Owed,
        .. facts.Fluids.Where(balance => !balance.IsRight).Select(balance => $"{balance.Title}: {balance.Verdict}"),
        .. replay.Unfollowed.Length > 0 ? [replay.Unfollowed] : (IEnumerable<string>)[],
    ];

    /// <summary>What was to be written down or signed at steps that are done, and was not, or is not as it must be.</summary>
    /// <param name="replay">The job.</param>
    public static IEnumerable<string> OfPaper(JobReplay replay) => [.. Readings(replay), .. Signatures(replay)];

    /// <summary>The work, and what of the refit puts nothing back by itself: checks, tests, what is renewed.</summary>
    private static IEnumerable<string> NotDone(JobReplay replay) =>
        replay.Course.Steps
            .Where(step => !replay.Done.ContainsKey(step.Number) && step.Phase != CoursePhase.Strip && !IsLeftWithItsStrip(replay, step))
            .Select(step => $"step {step.Number} is not done: {step.Line.Text}");

    /// <summary>Whether it puts back what was never taken off.</summary>
    private static bool IsLeftWithItsStrip(JobReplay replay, CourseStep step) =>
        step.Phase == CoursePhase.Refit && step.Line.Mirror > 0 && !replay.Done.ContainsKey(step.Line.Mirror);

    private static IEnumerable<string> Readings(JobReplay replay)
    {
        foreach (var step in replay.Course.Steps.Where(step => IsDoneHere(replay, step) && AsksForReading(step)))
        {
            switch (replay.ReadingAt(step.Number))
            {
                case null:
                    yield return $"step {step.Number}: the reading is missing ({step.Line.Reading?.Text ?? step.Line.Text})";
                    break;
                case { Verdict: ReadingVerdict.Out } reading:
                    yield return $"step {step.Number}: {reading.Value} was read, and it must be {reading.Limits}";
                    break;
                case { Verdict: ReadingVerdict.Unreadable } reading:
                    yield return $"step {step.Number}: `{reading.Value}` is no reading that can be compared with {reading.Limits}";
                    break;
            }
        }
    }

    /// <summary>Whether a step is done, and what was to be read at it was not written down.</summary>
    /// <param name="replay">The job.</param>
    /// <param name="step">The step.</param>
    public static bool LacksReading(JobReplay replay, CourseStep step)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(step);
        return IsDoneHere(replay, step) && AsksForReading(step) && replay.ReadingAt(step.Number) is null;
    }

    private static bool AsksForReading(CourseStep step) => step.Line.Reading is not null || step.Expect is not null;

    private static IEnumerable<string> Signatures(JobReplay replay)
    {
        var signed = replay.Signatures.Select(happened => happened.Step!.Value).ToHashSet();
        return replay.Course.Steps.Where(step => step.Line.Signed && IsDoneHere(replay, step) && !signed.Contains(step.Number))
            .Select(step => $"step {step.Number}: nobody has signed ({step.Line.Text})");
    }

    /// <summary>Whether it was done on this course: what was done before it was taken up has been asked for there.</summary>
    private static bool IsDoneHere(JobReplay replay, CourseStep step) => replay.Done.TryGetValue(step.Number, out var done) && done.Event is not null;

    private static bool IsWhole(JobReplay replay, string name) => replay.Course.Machine.Items.TryGetValue(name, out var item) && item switch
    {
        Joint joint => replay.Machine.Off(joint) == 0,
        Part part => replay.Machine.State.Place(part) == Analysis.States.PartPlace.Fitted,
        _ => false,
    };

    private static string Pieces(JobReplay replay, string name, int count) =>
        replay.Course.Machine.Items.TryGetValue(name, out var item) ? item is Joint joint ? TrueMachine.Pieces(joint, count) : TrueMachine.Title(item) : $"{count} × {name}";
}
