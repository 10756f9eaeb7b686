namespace ProcScript.Model.Quantities;

/// <summary>What a quantity measures.</summary>
public enum Dimension
{
    /// <summary>Torque; base unit N·m.</summary>
    Torque,

    /// <summary>Length; base unit m.</summary>
    Length,

    /// <summary>Mass; base unit kg.</summary>
    Mass,

    /// <summary>Volume; base unit m³.</summary>
    Volume,

    /// <summary>Pressure; base unit Pa.</summary>
    Pressure,

    /// <summary>Temperature; base unit K.</summary>
    Temperature,

    /// <summary>Time; base unit s.</summary>
    Time,

    /// <summary>Voltage; base unit V.</summary>
    Voltage,

    /// <summary>A share; base unit 1.</summary>
    Ratio,

    /// <summary>Volume by time; base unit m³/s.</summary>
    Flow,

    /// <summary>A plane angle; base unit °.</summary>
    Angle,

    /// <summary>Electric current; base unit A.</summary>
    Current,

    /// <summary>Electric resistance; base unit Ω.</summary>
    Resistance,

    /// <summary>Force; base unit N.</summary>
    Force,

    /// <summary>How often in a time; base unit 1/s.</summary>
    Frequency,

    /// <summary>A number of pieces, written without a unit.</summary>
    Count,
}
