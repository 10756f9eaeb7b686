using System.Globalization;
using ProcScript.Model.Quantities;

namespace ProcScript.Cards.Words;

/// <summary>Masses in words.</summary>
internal static class Masses
{
    // 1 lb = 0.45359237 kg, exact by definition (NIST Handbook 44, appendix C).
    private const double KilogramsPerPound = 0.45359237;

    /// <summary>Where the author writes pounds: these to a tenth, then kilograms to a tenth.</summary>
    public static string InPounds(double kilograms, NumberStyle style) =>
        style.Write(string.Create(CultureInfo.InvariantCulture, $"{kilograms / KilogramsPerPound:0.#} lb ({kilograms:0.#} kg)"));

    /// <summary>Kilograms to a tenth, pounds to a whole.</summary>
    public static string InWords(double kilograms, NumberStyle style) =>
        style.Write(string.Create(CultureInfo.InvariantCulture, $"{kilograms:0.#} kg ({kilograms / KilogramsPerPound:0} lb)"));
}
