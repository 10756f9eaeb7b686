using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Fluids;

/// <summary>What a fluid is to be filled to in a job: its nameplate charge, and what new parts add to it or take from it.</summary>
public static class ChargeBand
{
    /// <summary>The charge with its tolerance after the changes; null where the fluid has no charge.</summary>
    /// <param name="fluid">The fluid.</param>
    /// <param name="changes">The changes; those of a supply that goes along, and those measured otherwise than the charge, leave it as it is.</param>
    public static Quantity? Of(Fluid fluid, IEnumerable<ChargeChange> changes)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        ArgumentNullException.ThrowIfNull(changes);
        return fluid.Charge is { } charge
            ? changes
                .Where(change => change.Supply is null && change.Amount.Unit.Dimension == charge.Unit.Dimension)
                .Select(change => change.Amount.In(charge.Unit).Nominal * (change.Adds ? 1 : -1))
                .Aggregate(charge, Shift)
            : null;
    }

    /// <summary>From the least to the most that is right; null where the charge has no tolerance.</summary>
    /// <param name="charge">The charge.</param>
    public static Quantity? Band(Quantity? charge) =>
        charge is null or { Form: QuantityForm.Plain } ? null : charge with { Form = QuantityForm.Range };

    private static Quantity Shift(Quantity charge, double by) =>
        charge with { Nominal = charge.Nominal + by, Low = charge.Low + by, High = charge.High + by };
}
