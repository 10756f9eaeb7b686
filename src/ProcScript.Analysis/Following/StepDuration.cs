using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Following;

/// <summary>How long a step is planned to take, and what of the texts says so.</summary>
/// <param name="Seconds">How long it holds its people, in seconds; what cures afterwards does not count.</param>
/// <param name="Carrier">What carries the time.</param>
/// <param name="Pieces">How many pieces it moves one by one; 1 where it is one thing.</param>
/// <param name="WaitSeconds">How long the machine has to be waited for besides, in seconds; it is among <paramref name="Seconds"/>.</param>
/// <param name="IsPerPiece">Whether a time at the item or its kind is for one piece.</param>
public sealed record StepDuration(double Seconds, TimeCarrier Carrier, int Pieces, double WaitSeconds, bool IsPerPiece)
{
    /// <summary>The seconds that a carrier has to have for the step to take so long.</summary>
    /// <param name="seconds">How long the step takes.</param>
    /// <param name="carrier">The carrier.</param>
    public double Carry(double seconds, TimeCarrier carrier) => carrier switch
    {
        TimeCarrier.Kind => seconds / Pieces,
        TimeCarrier.Item => IsPerPiece ? seconds / Pieces : seconds - WaitSeconds,
        _ => seconds,
    };

    internal static StepDuration Of(PlannedStep step)
    {
        var given = GivenTime.Of(step);
        var isPerPiece = step is { Target: Joint, Cap: null } && GivenTime.IsByThePiece(step);
        return new StepDuration(
            StepTime.Of(step).Attended,
            given?.Carrier ?? TimeCarrier.None,
            isPerPiece ? Math.Max(1, step.Count) : 1,
            step.Target is Energy energy ? GivenTime.Wait(energy, step.Verb) : 0,
            isPerPiece);
    }
}

/// <summary>What carries the time of a step.</summary>
public enum TimeCarrier
{
    /// <summary>Nothing: it is a usual time.</summary>
    None,

    /// <summary>The block of the action: for the whole action.</summary>
    Action,

    /// <summary>The item: of a joint for one piece.</summary>
    Item,

    /// <summary>The kind of the joint, in the catalog: for one piece.</summary>
    Kind,

    /// <summary>What a fluid takes to run out or in.</summary>
    Takes,
}

/// <summary>An action in the text whose block speaks for a step.</summary>
/// <param name="Action">The action, from its first to its last word.</param>
/// <param name="OfRefit">Whether the block's <c>refit { … }</c> does, since the step is the inverse.</param>
public readonly record struct StepBlock(Syntax.Text.SourceSpan Action, bool OfRefit);
