using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>A fluid.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Charge">The nameplate charge with its tolerance, in words; empty where not said.</param>
/// <param name="Empty">How to empty it; Markdown.</param>
/// <param name="Fill">How to fill it; Markdown.</param>
/// <param name="EmptiedAt">The step that empties it.</param>
/// <param name="FilledAt">The step that fills it.</param>
public sealed record PlanFluid(string Name, string Title, string Charge, string Empty, string Fill, int EmptiedAt, int FilledAt)
{
    /// <summary>What it is filled to: the nameplate charge with what new parts change; in words, empty where no charge is given.</summary>
    public string FillTo { get; init; } = "";

    /// <summary>From the least to the most that may be in after the job, in words; empty where no tolerance is given.</summary>
    public string Band { get; init; } = "";

    /// <summary>What new parts add or take, in words.</summary>
    public ImmutableArray<string> Changes { get; init; } = [];

    /// <summary>Of a refrigerant the least that has to come out, in words (95 % of the nameplate charge); else empty.</summary>
    public string LeastRecovered { get; init; } = "";
}
