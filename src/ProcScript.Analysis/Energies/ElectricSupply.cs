using ProcScript.Analysis.Settings;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Energies;

/// <summary>
/// What is known of an energy as electricity, and from what voltage on it counts as high. Vehicles count from above 60 V direct and 30 V
/// alternating current on: the scope of 49 CFR 571.305 (S3) and the summary of DGUV Information 200-006, both read in stored copies.
/// </summary>
/// <param name="Voltage">Its voltage; null where nothing tells, or where it is none.</param>
/// <param name="Current">How its current flows.</param>
internal readonly record struct ElectricSupply(Quantity? Voltage, CurrentKind Current)
{
    /// <summary>What is known of an energy: what its <c>voltage</c> says, else what its title does.</summary>
    public static ElectricSupply Of(Energy energy) => new(
        energy.Voltage ?? EnergyWords.Voltage(energy.Title),
        energy.Current != CurrentKind.Unknown ? energy.Current : EnergyWords.Current(energy.Title));

    /// <summary>
    /// The most that it may read when it is proved dead. Where nothing tells how the current flows, the lower of both limits holds: whoever
    /// reads the meter may have either in hand.
    /// </summary>
    public Quantity MostWhenDead(PathSettings settings) => Limits(settings) switch
    {
        var (direct, alternating) => Current switch
        {
            CurrentKind.Direct => direct,
            CurrentKind.Alternating => alternating,
            _ => alternating.BaseValue < direct.BaseValue ? alternating : direct,
        },
    };

    /// <summary>Whether its voltage is beyond doubt above the limit: above both where nothing tells how the current flows.</summary>
    public bool IsHigh(PathSettings settings)
    {
        var (direct, alternating) = Limits(settings);
        return Voltage is { } voltage && voltage.BaseValue > Current switch
        {
            CurrentKind.Direct => direct.BaseValue,
            CurrentKind.Alternating => alternating.BaseValue,
            _ => Math.Max(direct.BaseValue, alternating.BaseValue),
        };
    }

    /// <summary>Whether its voltage is beyond doubt no more than the limit.</summary>
    public bool IsLow(PathSettings settings) => Voltage is { } voltage && voltage.BaseValue <= MostWhenDead(settings).BaseValue;

    private static (Quantity Direct, Quantity Alternating) Limits(PathSettings settings) =>
        (settings.Get(SettingsTable.SafeVoltage), settings.Get(SettingsTable.SafeVoltageAlternating));
}
