namespace ProcScript.Model.Machines;

/// <summary>What an item can do to people, beyond what an energy or a fluid says.</summary>
public enum Hazard
{
    /// <summary>Part of a restraint system: it can fire.</summary>
    Restraint,

    /// <summary>High voltage.</summary>
    HighVoltage,

    /// <summary>Under pressure.</summary>
    Pressure,

    /// <summary>A loaded spring.</summary>
    Spring,

    /// <summary>Hot enough to burn.</summary>
    HotSurface,

    /// <summary>Hot liquid or steam that gets out and scalds.</summary>
    Scald,

    /// <summary>A load that hangs, and can fall.</summary>
    SuspendedLoad,

    /// <summary>Refrigerant.</summary>
    Refrigerant,

    /// <summary>Ruined by an electrostatic discharge.</summary>
    Static,
}
