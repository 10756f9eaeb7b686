using ProcScript.Analysis.Following;
using ProcScript.Analysis.States;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Jobs.Standing;

/// <summary>What the readings say of the energies that are isolated: a step that was ticked proves nothing by itself.</summary>
public static class EnergyReadings
{
    /// <summary>What has to be said of energies whose reading is not as it must be.</summary>
    /// <param name="replay">The job.</param>
    public static IEnumerable<string> Unsafe(JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return replay.Course.Machine.Energies.Where(energy => IsOff(replay, energy))
            .Select(energy => (Energy: energy, Reading: Last(replay, energy)))
            .Where(proof => proof.Reading is { Verdict: not ReadingVerdict.Good })
            .Select(proof => $"the {proof.Energy.Title}: {proof.Reading!.Value} was read where it must be {proof.Reading.Limits}; treat it as live");
    }

    /// <summary>How something stands: what was ticked without its reading, or with a wrong one, nobody has proved.</summary>
    /// <param name="replay">The job.</param>
    /// <param name="open">What stands otherwise than on the whole machine.</param>
    public static string StateOf(JobReplay replay, OpenThing open)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(open);
        return open.Item is not Energy energy || !Proofs(replay, energy).Any() ? open.State
            : Last(replay, energy) switch
            {
                null => "isolated; the reading that proves it is missing",
                { Verdict: ReadingVerdict.Good } => open.State,
                _ => "isolated; its reading says otherwise",
            };
    }

    private static bool IsOff(JobReplay replay, Energy energy) =>
        replay.Machine.State[new StateVariable(StateKind.Live, energy.Index)] != (int)EnergyState.Live;

    private static IEnumerable<CourseStep> Proofs(JobReplay replay, Energy energy) =>
        replay.Course.Steps.Where(step => step.Target == energy && step is { Verb: Verb.Isolate or Verb.Verify, Expect: not null } && replay.Done.TryGetValue(step.Number, out var done) && done.Event is not null);

    private static TakenReading? Last(JobReplay replay, Energy energy) => Proofs(replay, energy).Select(step => replay.ReadingAt(step.Number)).LastOrDefault(reading => reading is not null);
}
