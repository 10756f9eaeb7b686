using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>How the machine stands at the end of a card, in short: what is not as on the whole machine.</summary>
public sealed record PlanStanding
{
    /// <summary>How many parts are out and go back.</summary>
    public int PartsOut { get; init; }

    /// <summary>How many parts are aside.</summary>
    public int PartsAside { get; init; }

    /// <summary>How many joints are open beside those of what is out or aside.</summary>
    public int JointsOpen { get; init; }

    /// <summary>The bags that hold something.</summary>
    public ImmutableArray<int> Bags { get; init; } = [];

    /// <summary>The energies that are isolated and proved to be off.</summary>
    public ImmutableArray<string> Isolated { get; init; } = [];

    /// <summary>The energies that are isolated, and not yet proved to be off.</summary>
    public ImmutableArray<string> Unproved { get; init; } = [];

    /// <summary>The fluids that are out.</summary>
    public ImmutableArray<string> FluidsOut { get; init; } = [];

    /// <summary>The parts that are propped.</summary>
    public ImmutableArray<string> Propped { get; init; } = [];

    /// <summary>How many caps and plugs are on.</summary>
    public int Caps { get; init; }

    /// <summary>The temporary parts that are on.</summary>
    public ImmutableArray<string> Temporary { get; init; } = [];
}
