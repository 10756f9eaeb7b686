using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>A card: a stage of the strip or of the refit, or the work.</summary>
/// <param name="Title">The title.</param>
/// <param name="Steps">Its steps.</param>
/// <param name="Seconds">Its time for one person.</param>
public sealed record PlanStage(string Title, ImmutableArray<PlanStep> Steps, double Seconds)
{
    /// <summary>How each energy that the job isolates stands when the card is taken up, and what becomes of it on the card.</summary>
    public ImmutableArray<PlanEnergyState> Energies { get; init; } = [];

    /// <summary>How the machine stands once every step of the card is done.</summary>
    public PlanStanding After { get; init; } = new();

    /// <summary>What is left out of it because it is done already.</summary>
    public ImmutableArray<PlanLeftOut> LeftOut { get; init; } = [];
}

/// <summary>What a stage leaves out because it is done already.</summary>
/// <param name="Before">The step that it would stand before; 0 at the end of the card.</param>
/// <param name="Text">What, and where it was done, in words.</param>
/// <param name="Steps">The steps that have done it; none where the machine comes in so.</param>
public sealed record PlanLeftOut(int Before, string Text, ImmutableArray<int> Steps);

/// <summary>How an energy stands when a card is taken up.</summary>
/// <param name="Name">The energy's name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="State"><c>live</c>, <c>isolated</c>, or <c>unproved</c>: isolated, and nothing has proved yet that it is off.</param>
/// <param name="Since">The step that brought it there; 0 where it has been so from the start.</param>
/// <param name="Turns">What becomes of it on the card.</param>
public sealed record PlanEnergyState(string Name, string Title, string State, int Since, ImmutableArray<PlanEnergyTurn> Turns);

/// <summary>A step after which an energy stands otherwise.</summary>
/// <param name="Step">The step.</param>
/// <param name="From">How it stood before: <c>live</c>, <c>isolated</c> or <c>unproved</c>.</param>
/// <param name="State">How it stands after.</param>
public sealed record PlanEnergyTurn(int Step, string From, string State);
