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
            Signed =
            [
                .. replay.Events.Where(happened => happened is { Kind: EventKind.Sign, Step: not null } && !replay.Slips.Contains(happened.Number))
                    .Select(happened => new NowSigned(happened.Step!.Value, happened.By)),
            ],
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
            Told = [.. replay.Events.Where(happened => IsTold(happened) && !replay.Slips.Contains(happened.Number)).TakeLast(MostTold)],
            Time = time,
        };
    }

    private static ImmutableArray<NowDone> Done(JobReplay replay)
    {
        var plan = replay.Course.Plan.Revision;
        var also = replay.Events.Where(happened => happened is { Kind: EventKind.Done, Step: not null } && (happened.Plan ?? plan) == plan && !replay.Slips.Contains(happened.Number))
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

    /// <summary>How an energy stands. That somebody ticks it off proves nothing: where a reading is asked for, it has to be there and right.</summary>
    private static string State(JobReplay replay, Energy energy)
    {
        var live = new StateVariable(StateKind.Live, energy.Index);
        return (EnergyState)replay.Machine.State[live] switch
        {
            EnergyState.Live => "live",
            EnergyState.Dead when replay.Course.Steps.Where(step => step.Changes.Any(change => change.Variable == live && change.After == (int)EnergyState.Dead) && replay.Done.GetValueOrDefault(step.Number)?.Event is not null)
                .MaxBy(step => replay.Done[step.Number].Event!.Number) is not { Expect: not null } proof || replay.ReadingAt(proof.Number)?.Verdict == ReadingVerdict.Good => "isolated",
            _ => "unproved",
        };
    }
}
