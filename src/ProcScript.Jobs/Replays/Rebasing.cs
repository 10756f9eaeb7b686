using ProcScript.Analysis.Following;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Replays;

/// <summary>Carries a job over to a newer text of its procedure.</summary>
public static class Rebasing
{
    /// <summary>The steps of a newer course that are done where the machine stands.</summary>
    /// <param name="replay">The job so far.</param>
    /// <param name="course">The newer course.</param>
    public static IEnumerable<int> Done(JobReplay replay, JobCourse course)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(course);
        var machine = replay.Machine.On(course);
        // What changed the machine is done where the machine stands so; what leaves no trace on it is done where the same was done before.
        var traceless = replay.Done.Keys.Select(number => replay.Course.Steps[number - 1]).Where(step => step.Changes.IsEmpty).Select(Key).ToHashSet(StringComparer.Ordinal);
        var stands = course.Begin();
        foreach (var step in course.Steps)
        {
            if (step.Changes.IsEmpty)
            {
                if (traceless.Contains(Key(step)))
                {
                    yield return step.Number;
                }

                continue;
            }

            if (step.Phase != CoursePhase.Refit && step.Changes.All(change => IsPast(machine, stands, change)))
            {
                stands.Do(step);
                yield return step.Number;
            }
        }
    }

    private static bool IsPast(TrueMachine machine, TrueMachine stands, Analysis.States.StateChange change) =>
        change.Variable.Kind == Analysis.States.StateKind.Attached
            ? machine.State[change.Variable] <= stands.State[change.Variable] - (change.Before - change.After)
            : machine.State[change.Variable] == change.After || machine.State[change.Variable] != stands.State[change.Variable];

    private static string Key(CourseStep step) => $"{step.Verb} {(step.Target as MachineItem)?.Name} {step.Line.Text}";
}
