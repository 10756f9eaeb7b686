using System.Collections.Immutable;

namespace ProcScript.Analysis.Totals;

/// <summary>A piece of work for <see cref="ListSchedule"/>.</summary>
/// <param name="Attended">How long it takes hands, from its start.</param>
/// <param name="Duration">How long until its effect is there; at least <paramref name="Attended"/>.</param>
/// <param name="Hands">How many people it takes; 0 for a mere mark in time.</param>
internal readonly record struct CrewTask(double Attended, double Duration, int Hands)
{
    /// <summary>The tasks whose effect it needs, by index.</summary>
    public ImmutableArray<int> After { get; init; } = [];

    /// <summary>The tasks that only have to have let go of their people, by index.</summary>
    public ImmutableArray<int> AfterHandsOf { get; init; } = [];
}
