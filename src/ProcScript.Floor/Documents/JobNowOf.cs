using System.Collections.Immutable;
using ProcScript.Analysis.States;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Standing;
using ProcScript.Model.Machines;

namespace ProcScript.Floor.Documents;

/// <summary>Says how a job stands, for a tablet.</summary>
internal static class JobNowOf
{
    private const int MostTold = 200;

    /// <summary>How it stands.</summary>
    /// <param name="replay">The job.</param>
    /// <param name="lastHash">The hash of the last line of its journal.</param>
    /// <param name="time">The server's clock.</param>
    public static JobNow Replay(JobReplay replay, string lastHash, DateTimeOffset time)
    {
        var status = JobStanding.Of(replay, lastHash, withWayBack: false);
        return new JobNow
        {
            Events = status.Events,
            LastHash = lastHash,
            Plan = status.Plan,
            State = status.State,
            Paused = replay.Paused,
            Closed = replay.Closed,
            Done = Done(replay),
            Readings =
            [
                .. replay.Readings.Where(reading => reading.Step > 0).GroupBy(reading => reading.Step).Select(step => step.Last())
                    .Select(reading => new NowReading(reading.Step, reading.Value, reading.Verdict.ToString().ToLowerInvariant(), reading.Event.By, reading.Event.At)),
            ],
            Signed = [.. replay.Signatures.Select(happened => new NowSigned(happened.Step!.Value, happened.By))],
            Next = status.Next,
            Energies =
            [
                .. replay.Course.Machine.Energies.Select(energy => new NowEnergy(energy.Name, energy.Title, State(replay, energy))),
            ],
            Unsafe = status.Unsafe,
            Hidden = status.Hidden,
            Open = status.Open,
            Bags = status.Bags,
            Pieces = status.Pieces,
            NeedsNewCards = status.NeedsNewCards,
            Unfollowed = status.Unfollowed,
            Deviations = status.Deviations,
            Fluids = status.Fluids,
            BeforeClosing = status.BeforeClosing,
            Told = [.. replay.WithoutSlips.Where(IsTold).TakeLast(MostTold)],
            Time = time,
        };
    }

    private static ImmutableArray<NowDone> Done(JobReplay replay)
    {
        var plan = replay.Course.Plan.Revision;
        var also = replay.WithoutSlips.Where(happened => happened is { Kind: EventKind.Done, Step: not null } && (happened.Plan ?? plan) == plan)
            .ToLookup(happened => happened.Step!.Value);
        return
        [
            .. replay.Done.Select(done => done.Value.Event is { } told
                ? new NowDone(done.Key, told.Number, told.By, told.At, told.Logged, told.Count ?? 0, [.. also[done.Key].Where(other => other.Number > told.Number && other.By != told.By).Select(other => other.By).Distinct()])
                : new NowDone(done.Key, 0, "", null, null, 0, [])),
        ];
    }

    private static bool IsTold(JobEvent happened) => happened.Kind is EventKind.Note or EventKind.Photo or EventKind.Broke or EventKind.Missing or EventKind.Found
        or EventKind.Bag or EventKind.HandOver or EventKind.Pause or EventKind.Resume or EventKind.Did;

    private static string State(JobReplay replay, Energy energy) => (EnergyState)replay.Machine.State[new StateVariable(StateKind.Live, energy.Index)] switch
    {
        EnergyState.Live => "live",
        EnergyState.Dead when EnergyReadings.Of(replay, energy) is EnergyProof.NotAsked or EnergyProof.Right => "isolated",
        _ => "unproved",
    };
}
