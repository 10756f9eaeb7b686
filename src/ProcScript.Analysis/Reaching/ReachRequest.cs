using System.Collections.Immutable;

namespace ProcScript.Analysis.Reaching;

/// <summary>What something is reached for.</summary>
public enum ReachPurpose
{
    /// <summary>To take it off.</summary>
    Remove,

    /// <summary>To get at it where it is.</summary>
    Inspect,

    /// <summary>To take it off and put a new one in.</summary>
    Replace,
}

/// <summary>A question how to reach something.</summary>
/// <param name="Items">The names, or the titles, of parts and joints.</param>
/// <param name="Purpose">What for.</param>
public sealed record ReachRequest(ImmutableArray<string> Items, ReachPurpose Purpose)
{
    /// <summary>The machine; null where the items say which.</summary>
    public string? Machine { get; init; }

    /// <summary>The options that the machine has; null for as few as it takes to have the items.</summary>
    public ImmutableArray<string>? With { get; init; }

    /// <summary>What counts beside time.</summary>
    public ReachWeights Weights { get; init; } = ReachWeights.TimeAlone;

    /// <summary>How many of the next best ways are wanted.</summary>
    public int RunnersUp { get; init; } = 3;

    /// <summary>How much is searched at the most, in conditions looked at; then the answer says how far it may be from the best.</summary>
    public long Budget { get; init; } = 20_000_000;
}
