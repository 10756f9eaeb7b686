namespace ProcScript.Analysis.Fluids;

/// <summary>
/// What is asked of a refrigerant service. Both figures are SAE J2788's for machines that recover and charge HFC-134a, from memory: the
/// standard itself could not be read.
/// </summary>
public static class RefrigerantService
{
    /// <summary>The least share of the nameplate charge that a machine has to recover; a ratio.</summary>
    public const double LeastRecovered = 0.95;

    /// <summary>How near a machine has to charge to what is set, either way, in kilograms.</summary>
    public const double ChargeAccuracy = 0.015;
}
