using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Energies;

/// <summary>What the reading that an energy's <c>verify</c> expects proves: that it is off, or nothing, or that it is on.</summary>
internal static class DeadReading
{
    /// <summary>
    /// The share of its own voltage or pressure that a live supply still reads when it is low: a flat battery and a sagging mains give more
    /// than four fifths. Common practice, no source.
    /// </summary>
    private const double LowButLive = 0.8;

    /// <summary>What is wrong with what an energy expects; null where a dead circuit alone can read so, or where nothing is expected.</summary>
    public static DeadReadingFault? Fault(Energy energy)
    {
        if (energy.VerifyExpect is not { Quantity: var quantity, Relation: var relation } || !IsOfNothing(quantity.Unit.Dimension))
        {
            return null;
        }

        return relation switch
        {
            // Where a vacuum is what is live, the dead circuit is the one that reads more.
            LimitRelation.AtLeast or LimitRelation.More =>
                quantity is { Unit.Dimension: Dimension.Pressure, High: < 0 } ? null : DeadReadingFault.NoEnd,
            LimitRelation.AtMost when quantity.High < 0 => DeadReadingFault.NotDead,
            LimitRelation.Less when quantity.High <= 0 => DeadReadingFault.NotDead,
            LimitRelation.Within when quantity is { Low: > 0 } or { High: < 0 } => DeadReadingFault.NotDead,
            _ => Own(energy, quantity.Unit.Dimension) is { } own && Top(quantity) >= LowButLive * own.BaseValue ? DeadReadingFault.ReachesLive : null,
        };
    }

    /// <summary>The voltage or pressure that the energy has while it is live; null where nothing tells.</summary>
    public static Quantity? Own(Energy energy, Dimension dimension) => dimension switch
    {
        Dimension.Voltage => ElectricSupply.Of(energy).Voltage,
        Dimension.Pressure => EnergyWords.Pressure(energy.Title),
        _ => null,
    };

    /// <summary>Whether a circuit that is off reads zero in it.</summary>
    private static bool IsOfNothing(Dimension dimension) =>
        dimension is Dimension.Voltage or Dimension.Current or Dimension.Pressure or Dimension.Force or Dimension.Flow;

    private static double Top(Quantity quantity) => quantity.High * quantity.Unit.Factor;
}

/// <summary>What is wrong with a reading that is to prove an energy dead.</summary>
internal enum DeadReadingFault
{
    /// <summary>It has no upper end, so that a live circuit passes.</summary>
    NoEnd,

    /// <summary>A dead circuit does not read so.</summary>
    NotDead,

    /// <summary>It goes up to what a live circuit reads.</summary>
    ReachesLive,
}
