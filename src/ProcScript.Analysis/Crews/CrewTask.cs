using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>A piece of work for a crew. Times are whole units of the caller's choice; those of a job are milliseconds.</summary>
/// <param name="Attended">How long it holds its people and what else it uses, from its start.</param>
/// <param name="Duration">How long until its effect is there; at least <paramref name="Attended"/>.</param>
/// <param name="Hands">How many people it takes, all at the same moment; 0 for what nobody attends to.</param>
public sealed record CrewTask(long Attended, long Duration, int Hands)
{
    /// <summary>The tasks whose effect it needs, by index.</summary>
    public ImmutableArray<int> After { get; init; } = [];

    /// <summary>The tasks that only have to have let go of their people, by index.</summary>
    public ImmutableArray<int> AfterHandsOf { get; init; } = [];

    /// <summary>Whether nobody works on anything else meanwhile: all others stand clear.</summary>
    public bool StandClear { get; init; }

    /// <summary>The certificates for which one of its people has to hold each, indices into <see cref="CrewProblem.Holders"/>.</summary>
    public ImmutableArray<int> Certificates { get; init; } = [];

    /// <summary>What else it holds while it is attended to, such as a place with room for one.</summary>
    public ImmutableArray<CrewUse> Uses { get; init; } = [];

    /// <summary>The task that is this one's other half, whose people know it best, by index; -1 where there is none.</summary>
    public int KnownFrom { get; init; } = -1;
}

/// <summary>So much of something of which there is only so much.</summary>
/// <param name="Resource">Of what, an index into <see cref="CrewProblem.Capacities"/>.</param>
/// <param name="Amount">How much.</param>
public readonly record struct CrewUse(int Resource, int Amount);
