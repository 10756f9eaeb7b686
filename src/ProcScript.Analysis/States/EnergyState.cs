namespace ProcScript.Analysis.States;

/// <summary>What an energy is like.</summary>
public enum EnergyState
{
    /// <summary>Isolated, and proved to be off.</summary>
    Dead,

    /// <summary>Live.</summary>
    Live,

    /// <summary>Isolated; nobody has been able to prove yet that it is off.</summary>
    Unproved,
}
