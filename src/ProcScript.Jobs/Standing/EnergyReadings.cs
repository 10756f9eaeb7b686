using ProcScript.Analysis.Following;
using ProcScript.Analysis.States;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Standing;

/// <summary>What the readings say of the energies that are isolated: a step that was ticked proves nothing by itself.</summary>
public static class EnergyReadings
{
    /// <summary>What the reading says that was to be taken where an energy was isolated last.</summary>
    /// <param name="replay">The job.</param>
    /// <param name="energy">An energy that is isolated.</param>
    public static EnergyProof Of(JobReplay replay, Energy energy)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(energy);
        return Step(replay, energy) is not { Expect: not null } step ? EnergyProof.NotAsked
            : replay.ReadingAt(step.Number) switch
            {
                null => EnergyProof.Missing,
                { Verdict: ReadingVerdict.Good } => EnergyProof.Right,
                _ => EnergyProof.Wrong,
            };
    }

    /// <summary>What has to be said of energies whose reading is not as it must be.</summary>
    /// <param name="replay">The job.</param>
    public static IEnumerable<string> Unsafe(JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return replay.Course.Machine.Energies.Where(energy => replay.Machine.State[Live(energy)] != (int)EnergyState.Live && Of(replay, energy) == EnergyProof.Wrong)
            .Select(energy => (Energy: energy, Reading: replay.ReadingAt(Step(replay, energy)!.Number)!))
            .Select(proof => $"the {proof.Energy.Title}: {proof.Reading.Value} was read where it must be {proof.Reading.Limits}; treat it as live");
    }

    /// <summary>How something stands: what was ticked without its reading, or with a wrong one, nobody has proved.</summary>
    /// <param name="replay">The job.</param>
    /// <param name="open">What stands otherwise than on the whole machine.</param>
    public static string StateOf(JobReplay replay, OpenThing open)
    {
        ArgumentNullException.ThrowIfNull(open);
        return (open.Item is Energy energy ? Of(replay, energy) : EnergyProof.NotAsked) switch
        {
            EnergyProof.Missing => "isolated; the reading that proves it is missing",
            EnergyProof.Wrong => "isolated; its reading says otherwise",
            _ => open.State,
        };
    }

    /// <summary>The step that proved an energy to be off last; null where none was done on these cards.</summary>
    private static CourseStep? Step(JobReplay replay, Energy energy) => replay.Course.Steps
        .Where(step => replay.Done.GetValueOrDefault(step.Number)?.Event is not null && step.Changes.Any(change => change.Variable == Live(energy) && change.After == (int)EnergyState.Dead))
        .MaxBy(step => replay.Done[step.Number].Event!.Number);

    private static StateVariable Live(Energy energy) => new(StateKind.Live, energy.Index);
}

/// <summary>What the reading says that proves an energy to be off.</summary>
public enum EnergyProof
{
    /// <summary>None is asked for on these cards.</summary>
    NotAsked,

    /// <summary>It was not written down.</summary>
    Missing,

    /// <summary>It is not as it must be.</summary>
    Wrong,

    /// <summary>It is as it must be.</summary>
    Right,
}
