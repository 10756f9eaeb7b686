using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Fluids;

/// <summary>
/// The balance of one fluid over a job: what belongs in, what came out, what went in. What went in is judged by what belongs in, never
/// by what came out: what had leaked away before would be left out again.
/// </summary>
public sealed record ChargeBalance
{
    private const double Noise = 1e-12;

    /// <summary>Takes what belongs in, with its tolerance, and what was read.</summary>
    /// <param name="nameplate">What belongs in, by mass or volume; more than nothing.</param>
    /// <param name="recovered">What came out, measured like the nameplate charge; null where not known.</param>
    /// <param name="charged">What went in, measured like the nameplate charge; null where not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">The nameplate charge is nothing, or a reading is below nothing.</exception>
    /// <exception cref="ArgumentException">One is a mass and the other a volume.</exception>
    public ChargeBalance(Quantity nameplate, Quantity? recovered, Quantity? charged)
    {
        ArgumentNullException.ThrowIfNull(nameplate);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(nameplate.Nominal, nameof(nameplate));
        (Nameplate, Recovered, Charged) = (nameplate, InUnitOf(nameplate, recovered), InUnitOf(nameplate, charged));
    }

    /// <summary>What belongs in.</summary>
    public Quantity Nameplate { get; }

    /// <summary>What came out, in the unit of the nameplate charge; null where not known.</summary>
    public Quantity? Recovered { get; }

    /// <summary>What went in, in the unit of the nameplate charge; null where not known.</summary>
    public Quantity? Charged { get; }

    /// <summary>What share of the nameplate charge came out; a ratio, null where not known.</summary>
    public double? ShareRecovered => Recovered?.Nominal / Nameplate.Nominal;

    /// <summary>What did not come out, in the unit of the nameplate charge: below zero where more was in; null where not known.</summary>
    public double? Missing => Nameplate.Nominal - Recovered?.Nominal;

    /// <summary>
    /// Whether as much came out as a refrigerant service must recover (<see cref="RefrigerantService.LeastRecovered"/>); less is a sign of a
    /// leak and has to be noted. Null where not known.
    /// </summary>
    public bool? IsRecovered => ShareRecovered is { } share ? share >= RefrigerantService.LeastRecovered - Noise : null;

    /// <summary>Whether what went in lies within the tolerance of the nameplate charge; null where not known.</summary>
    public bool? IsCharged => Charged is { } charged ? IsInBand(charged.Nominal) : null;

    /// <summary>Whether it lies in the band, with room for what a conversion of units leaves in the last digits of a number.</summary>
    private bool IsInBand(double charged)
    {
        var noise = Nameplate.Nominal * Noise;
        return charged >= Nameplate.Low - noise && charged <= Nameplate.High + noise;
    }

    private static Quantity? InUnitOf(Quantity nameplate, Quantity? reading)
    {
        if (reading is null)
        {
            return null;
        }

        if (reading.Unit.Dimension != nameplate.Unit.Dimension)
        {
            throw new ArgumentException("A charge is balanced by mass or by volume, not by both.", nameof(reading));
        }

        ArgumentOutOfRangeException.ThrowIfNegative(reading.Nominal, nameof(reading));
        return reading.In(nameplate.Unit);
    }
}
