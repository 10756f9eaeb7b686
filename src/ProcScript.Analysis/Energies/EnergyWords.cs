using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Energies;

/// <summary>
/// What the title of an energy, a fluid or a part says of it in English words and in figures: <c>400 V traction battery</c>. Only words that
/// leave no doubt count.
/// </summary>
internal static partial class EnergyWords
{
    /// <summary>The voltage that a title gives, the highest of several; null where it gives none.</summary>
    public static Quantity? Voltage(string title) => Highest(VoltageFigure(), title);

    /// <summary>The pressure that a title gives, the highest of several; null where it gives none.</summary>
    public static Quantity? Pressure(string title) => Highest(PressureFigure(), title);

    /// <summary>How the current flows, as far as the words of a title tell.</summary>
    public static CurrentKind Current(string title) => (DirectWords().IsMatch(title), AlternatingWords().IsMatch(title)) switch
    {
        (true, false) => CurrentKind.Direct,
        (false, true) => CurrentKind.Alternating,
        _ => CurrentKind.Unknown,
    };

    /// <summary>Whether the words speak of electricity.</summary>
    public static bool IsElectrical(string title) =>
        VoltageFigure().IsMatch(title) || DirectWords().IsMatch(title) || AlternatingWords().IsMatch(title) || ElectricWords().IsMatch(title);

    /// <summary>Whether an energy is electrical, by its voltage or its words.</summary>
    public static bool IsElectrical(Energy energy) => energy.Voltage is not null || IsElectrical(energy.Title);

    /// <summary>Whether the words speak of a battery, which has its voltage with or without the machine.</summary>
    public static bool IsBattery(string title) => BatteryWords().IsMatch(title);

    /// <summary>Whether the words speak of a gas that burns.</summary>
    public static bool IsGas(string title) => GasWords().IsMatch(title);

    /// <summary>Whether the words speak of hydraulics or pneumatics.</summary>
    public static bool IsFluidPower(string title) => FluidPowerWords().IsMatch(title);

    /// <summary>Whether a text says how an isolating device is held off.</summary>
    public static bool SpeaksOfLock(string text) => LockWords().IsMatch(text);

    private static Quantity? Highest(Regex figures, string title)
    {
        Quantity? highest = null;
        for (var figure = figures.Match(title); figure.Success; figure = figure.NextMatch())
        {
            var value = double.Parse(figure.Groups["value"].ValueSpan, CultureInfo.InvariantCulture);
            var quantity = new Quantity(value, value, value, Units.Find(figure.Groups["unit"].Value)!, QuantityForm.Plain);
            highest = highest is null || quantity.BaseValue > highest.BaseValue ? quantity : highest;
        }

        return highest;
    }

    [GeneratedRegex(@"(?<![\w.])(?<value>\d+(\.\d+)?)[\s-]?(?<unit>kV|V)\b", RegexOptions.CultureInvariant)]
    private static partial Regex VoltageFigure();

    [GeneratedRegex(@"(?<![\w.])(?<value>\d+(\.\d+)?)[\s-]?(?<unit>mbar|bar|kPa|MPa|psi)\b", RegexOptions.CultureInvariant)]
    private static partial Regex PressureFigure();

    [GeneratedRegex(@"\b(d\.?c\.?|direct[ -]current|batter(y|ies)|traction|cells?|supercapacitors?|solar|photovoltaic)(?!\w)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DirectWords();

    [GeneratedRegex(
        @"\b(a\.?c\.?(?=$|\s+(supply|mains|circuit|feed|line|power))|alternating[ -]current|(?<!(water|gas)\s)mains(?!\s+(water|gas|pressure))|(three|single|split)[ -]phase|phases?)(?!\w)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AlternatingWords();

    [GeneratedRegex(@"\b(batter(y|ies)|traction|accumulators?|cells?|packs?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex BatteryWords();

    [GeneratedRegex(@"\b(electric\w*|ignition|lamps?|lights?|lighting|charger|alternator|inverter|control (supply|circuit|voltage)|fuse)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex ElectricWords();

    [GeneratedRegex(@"\b(gas(es)?(?!\s+(struts?|springs?|dampers?|generators?|pedals?))|propane|butane|methane|acetylene|hydrogen|lpg|lng|cng)\b(?<!\bexhaust\s+gas(es)?)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex GasWords();

    [GeneratedRegex(@"\b(hydraulics?|pneumatics?|compressed[ -]air|(shop|air) (supply|line|pressure)|shop air)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex FluidPowerWords();

    [GeneratedRegex(@"\b(locks?|padlock|tags?|pocket|in\s+sight|person|key\s+with\s+you)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LockWords();
}
