namespace ProcScript.Analysis.States;

/// <summary>One thing about a machine that actions change: the place of a part, how many of a joint are attached.</summary>
/// <param name="Kind">What it tells.</param>
/// <param name="Index">The item's place among those of its sort.</param>
public readonly record struct StateVariable(StateKind Kind, int Index)
{
    private const int BitsOfKind = 4;

    /// <summary>Different for any two variables of a machine: they are looked up all the time.</summary>
    public override int GetHashCode() => (Index << BitsOfKind) | (int)Kind;
}

/// <summary>What a variable of the state tells.</summary>
public enum StateKind
{
    /// <summary>How many of a joint or cover are attached.</summary>
    Attached,

    /// <summary>Whether what is attached of a joint is slack: 0 or 1.</summary>
    Slack,

    /// <summary>Where a part is: a <see cref="PartPlace"/>.</summary>
    Place,

    /// <summary>Whether a part is propped: 0 or 1.</summary>
    Propped,

    /// <summary>What an energy is like: an <see cref="EnergyState"/>.</summary>
    Live,

    /// <summary>Whether a fluid is in: 0 or 1.</summary>
    Full,

    /// <summary>The position of a control.</summary>
    Position,

    /// <summary>Of how many of a joint that are off the openings are capped.</summary>
    Capped,

    /// <summary>Whether the hole that a part leaves is capped: 0 or 1.</summary>
    Plugged,
}

/// <summary>Where a part is.</summary>
public enum PartPlace
{
    /// <summary>Where it belongs.</summary>
    Fitted,

    /// <summary>Out of the way without being off.</summary>
    Aside,

    /// <summary>Off; with all that is still inside it, it is an assembly of its own.</summary>
    Out,
}
