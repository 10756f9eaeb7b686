using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Following;

/// <summary>Something of a machine that is not as on the whole machine.</summary>
/// <param name="Item">The item.</param>
/// <param name="Sort">In what way.</param>
/// <param name="Title">What people call it; of a joint with its pieces and where it is.</param>
/// <param name="State">How it stands, in words.</param>
public sealed record OpenThing(MachineItem Item, OpenSort Sort, string Title, string State);

/// <summary>In what way something is not as on the whole machine.</summary>
public enum OpenSort
{
    /// <summary>An energy is isolated, or not proved to be off.</summary>
    Energy,

    /// <summary>A part is out or aside.</summary>
    Part,

    /// <summary>A joint is open, slack, or not all of it is on.</summary>
    Joint,

    /// <summary>A fluid is out.</summary>
    Fluid,

    /// <summary>A part is supported.</summary>
    Prop,

    /// <summary>An opening is capped.</summary>
    Cap,

    /// <summary>A part is on for the job alone.</summary>
    Temporary,

    /// <summary>A control is not where it was.</summary>
    Control,
}
