namespace ProcScript.Analysis.Settings;

/// <summary>The unit that a shop's torque wrenches are set in.</summary>
public enum TorqueUnit
{
    /// <summary>N·m.</summary>
    NewtonMetre,

    /// <summary>lbf·ft.</summary>
    PoundForceFoot,
}
