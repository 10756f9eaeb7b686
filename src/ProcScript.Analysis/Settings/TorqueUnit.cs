namespace ProcScript.Analysis.Settings;

/// <summary>The unit that a shop's torque wrenches are set in.</summary>
public enum TorqueUnit
{
    /// <summary>None is chosen: each torque in the unit that it is written in.</summary>
    AsWritten,

    /// <summary>N·m.</summary>
    NewtonMetre,

    /// <summary>lbf·ft.</summary>
    PoundForceFoot,
}
