using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.States;

namespace ProcScript.Jobs.Replays;

/// <summary>Carries a job over to a newer text of its procedure.</summary>
public static class Rebasing
{
    /// <summary>Works out what a newer course means for the machine as it stands.</summary>
    /// <param name="replay">The job so far.</param>
    /// <param name="newer">The course of the newer text, from its start.</param>
    public static CarriedJob Carry(JobReplay replay, JobCourse newer)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(newer);
        var gone = replay.Machine.NotWhole().Where(open => !newer.Machine.Items.ContainsKey(open.Item.Name))
            .Select(open => $"{open.Title} is {open.State}, and the newer text knows nothing of it").ToImmutableArray();
        if (!gone.IsEmpty)
        {
            return new CarriedJob(null, [], [], gone);
        }

        var machine = replay.Machine.On(newer);
        var isBefore = !replay.Done.Keys.Any(number => replay.Course.Steps[number - 1].Phase == CoursePhase.Refit);
        return isBefore && Along(replay, newer, machine) is { } done
            ? new CarriedJob(newer, done, Means(replay, newer, done), [])
            : Home(replay, machine);
    }

    /// <summary>The steps of the newer strip that lead just to where the machine stands; null where they lead elsewhere.</summary>
    private static ImmutableArray<int>? Along(JobReplay replay, JobCourse newer, TrueMachine machine)
    {
        var traceless = replay.Done.Keys.Select(number => replay.Course.Steps[number - 1]).Where(step => step.Changes.IsEmpty).Select(Key).ToHashSet(StringComparer.Ordinal);
        var stands = newer.Begin();
        var done = ImmutableArray.CreateBuilder<int>();
        foreach (var step in newer.Steps.Where(step => step.Phase != CoursePhase.Refit))
        {
            if (step.Changes.IsEmpty ? traceless.Contains(Key(step)) : step.Changes.All(change => Leads(machine, stands, change)))
            {
                stands.Do(step);
                done.Add(step.Number);
            }
        }

        return stands.State.Differences(machine.State).Any() ? null : done.ToImmutable();
    }

    /// <summary>Whether a change leads from where a machine is to where it stands, and not past it.</summary>
    private static bool Leads(TrueMachine machine, TrueMachine stands, StateChange change)
    {
        var (now, wanted) = (stands.State[change.Variable], machine.State[change.Variable]);
        return change.Variable.Kind is StateKind.Attached or StateKind.Capped
            ? Math.Abs(wanted - now) >= Math.Abs(change.After - change.Before) && Math.Sign(wanted - now) == Math.Sign(change.After - change.Before)
            : now != wanted && now == change.Before;
    }

    /// <summary>Where the machine stands as the newer strip never has it, the way back is the course.</summary>
    private static CarriedJob Home(JobReplay replay, TrueMachine machine) => machine.WayHome() is { } course
        ? new CarriedJob(course, course.Done, ["The machine stands as the newer strip never has it, or its refit has begun: the new cards are the way back from here.", .. course.LeftOut.Select(text => $"Left out, since it asks for what is not so on this way: {text}")], [])
        : new CarriedJob(null, [], [], [$"no refit by the newer text is proven from how the machine stands ({replay.Machine.NotWhole().Count()} things are open)"]);

    private static ImmutableArray<string> Means(JobReplay replay, JobCourse newer, ImmutableArray<int> done)
    {
        var before = replay.Course.Steps.Where(step => !replay.Done.ContainsKey(step.Number)).Select(Key).ToHashSet(StringComparer.Ordinal);
        var left = newer.Steps.Where(step => !done.Contains(step.Number)).ToList();
        var after = left.Select(Key).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. left.Where(step => !before.Contains(Key(step))).Select(step => $"+ step {step.Number}: {step.Line.Text}"),
            .. replay.Course.Steps.Where(step => before.Contains(Key(step)) && !after.Contains(Key(step))).Select(step => $"- no longer: {step.Line.Text}"),
        ];
    }

    private static string Key(CourseStep step) => $"{step.Phase} {step.Verb} {step.Target?.Name} {step.Line.Text} {step.Line.Torque}";
}

/// <summary>A job carried over to a newer text.</summary>
/// <param name="Course">The course to go on by; null where it is refused.</param>
/// <param name="Done">The steps of it that are done.</param>
/// <param name="Means">What that means for what is left, in words.</param>
/// <param name="Refusals">Why it is refused; none where it is not.</param>
public sealed record CarriedJob(JobCourse? Course, ImmutableArray<int> Done, ImmutableArray<string> Means, ImmutableArray<string> Refusals);
