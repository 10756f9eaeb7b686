using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Replays;

namespace ProcScript.Jobs.Standing;

/// <summary>What both a job's status and what keeps it from being closed are told from, found out once.</summary>
/// <param name="NotWhole">What is not as on the whole machine, each with how it stands.</param>
/// <param name="Unsafe">What can hurt somebody as the machine stands.</param>
/// <param name="Bags">The bags that are not empty.</param>
/// <param name="Pieces">Pieces that are left over, missing or broken.</param>
/// <param name="Fluids">What came out and went in of each fluid.</param>
internal sealed record StandingFacts(
    ImmutableArray<(OpenThing Thing, string State)> NotWhole, ImmutableArray<string> Unsafe, ImmutableArray<BagContents> Bags, ImmutableArray<string> Pieces, ImmutableArray<FluidBalance> Fluids)
{
    /// <summary>Finds them out.</summary>
    /// <param name="replay">The job.</param>
    public static StandingFacts Of(JobReplay replay) => new(
        [.. replay.Machine.NotWhole().Select(open => (open, EnergyReadings.StateOf(replay, open)))],
        [.. replay.Machine.Unsafe(), .. EnergyReadings.Unsafe(replay)],
        [.. BagContents.Of(replay)],
        [.. JobClosing.Pieces(replay)],
        [.. FluidBalance.Of(replay)]);
}
