using System.Text.RegularExpressions;
using ProcScript.Analysis.Energies;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What sort of energy something is or is on, as far as its marks and the English words of its title say.</summary>
internal static partial class EnergySorts
{
    /// <summary>
    /// Where the voltage of an item comes from: an alternating one from the mains; else by its own title, or by those of the energies it is on.
    /// </summary>
    public static VoltageSource VoltageOf(MachineItem item)
    {
        if ((item as Energy ?? (item as Joint)?.On)?.Current == CurrentKind.Alternating)
        {
            return VoltageSource.Mains;
        }

        IEnumerable<string?> titles = item switch
        {
            Joint joint => [joint.Title, joint.On?.Title, joint.Owner.Title],
            Part part => [part.Title, .. part.Joints.Select(joint => joint.On?.Title)],
            _ => [item.Title],
        };
        return titles.OfType<string>().Select(VoltageOf).FirstOrDefault(source => source != VoltageSource.Unknown);
    }

    /// <summary>
    /// Whether a lock can hold it off: electricity, air, oil, gas, steam and water come through a device that can be locked. A spring, heat and
    /// a raised weight do not; what holds those back is told where they are let out.
    /// </summary>
    public static bool CanBeLocked(Energy energy)
    {
        if (energy.Hazards.Any(hazard => hazard is Hazard.HighVoltage or Hazard.Pressure or Hazard.Restraint or Hazard.Refrigerant))
        {
            return true;
        }

        return !Spring().IsMatch(energy.Title)
            && (Source().IsMatch(energy.Title)
                || !(Stored().IsMatch(energy.Title)
                    || energy.Hazards.Any(hazard => hazard is Hazard.Spring or Hazard.HotSurface or Hazard.SuspendedLoad)));
    }

    private static VoltageSource VoltageOf(string title) => title switch
    {
        _ when EnergyWords.IsBattery(title) => VoltageSource.Battery,
        _ when EnergyWords.Current(title) == CurrentKind.Alternating => VoltageSource.Mains,
        _ => VoltageSource.Unknown,
    };

    [GeneratedRegex(@"\b(springs?|struts?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Spring();

    [GeneratedRegex(
        @"\b(mains|supply|batter(y|ies)|\d+ ?V|volts?|voltage|electric\w*|circuit|power|ignition|air|pneumatics?|hydraulics?|gas|steam|water|fuel|oil|phase)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Source();

    [GeneratedRegex(@"\b(heat|hot|gravity|weights?|counterweights?|raised)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Stored();
}

/// <summary>Where a voltage comes from.</summary>
internal enum VoltageSource
{
    /// <summary>Nothing says it.</summary>
    Unknown,

    /// <summary>A battery.</summary>
    Battery,

    /// <summary>The mains.</summary>
    Mains,
}
