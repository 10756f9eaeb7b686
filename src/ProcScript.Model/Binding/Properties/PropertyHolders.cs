namespace ProcScript.Model.Binding.Properties;

/// <summary>The blocks that hold properties.</summary>
[Flags]
internal enum PropertyHolders
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>A tool.</summary>
    Tool = 1,

    /// <summary>A supply.</summary>
    Supply = 1 << 1,

    /// <summary>A kind of joint.</summary>
    Kind = 1 << 2,

    /// <summary>A machine, right inside.</summary>
    Machine = 1 << 3,

    /// <summary>An energy.</summary>
    Energy = 1 << 4,

    /// <summary>A fluid.</summary>
    Fluid = 1 << 5,

    /// <summary>A control.</summary>
    Control = 1 << 6,

    /// <summary>A part.</summary>
    Part = 1 << 7,

    /// <summary>A joint.</summary>
    Joint = 1 << 8,

    /// <summary>A cover.</summary>
    Cover = 1 << 9,

    /// <summary>A procedure, right inside.</summary>
    Procedure = 1 << 10,

    /// <summary>An action on an item.</summary>
    ItemAction = 1 << 11,

    /// <summary>A measurement, task or check.</summary>
    TextAction = 1 << 12,

    /// <summary>The <c>refit</c> block of an action.</summary>
    Refit = 1 << 13,

    /// <summary>The <c>verify</c> of an energy.</summary>
    Verification = 1 << 14,

    /// <summary>A certificate.</summary>
    Certificate = 1 << 15,
}
