using System.Globalization;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Quantities;

/// <summary>
/// Quantities as cards print them, in the style of a language, English where none is given: <c>22 ± 2 N·m</c>, <c>0.5 to 2.0 L/min</c>, <c>1 3/8 in</c>. What the author
/// wrote is printed as it was; a converted value keeps what its tolerance says of it (two significant digits of the tolerance where the three
/// first are 354 or less, else one, and as many decimals of the value: the rule of the Particle Data Group; from memory), or three significant
/// digits without one.
/// </summary>
public static class QuantityFormat
{
    /// <summary>Beyond these a double holds noise of the conversion from decimals, not what anybody wrote.</summary>
    private const int WrittenDigits = 9;

    /// <summary>The finest fraction of an inch that tools and drawings use.</summary>
    private const int FinestFraction = 64;

    /// <summary>The quantity in the unit it was written in.</summary>
    public static string Print(this Quantity quantity) => quantity.Print(NumberStyle.English);

    /// <summary>The quantity in the unit it was written in, in the style of a language.</summary>
    public static string Print(this Quantity quantity, NumberStyle style)
    {
        if (quantity.Form == QuantityForm.Plain && quantity.Unit == Units.Inch && AsFraction(quantity.Nominal) is { } fraction)
        {
            return WithUnit(fraction, quantity.Unit);
        }

        var decimals = quantity.Form switch
        {
            QuantityForm.PlusMinus => Math.Max(WrittenDecimals(quantity.Nominal), WrittenDecimals(Tolerance(quantity))),
            QuantityForm.Range => Math.Max(WrittenDecimals(quantity.Low), WrittenDecimals(quantity.High)),
            _ => WrittenDecimals(quantity.Nominal),
        };
        return Print(quantity, decimals, style);
    }

    /// <summary>The quantity converted to another unit of its dimension.</summary>
    public static string PrintIn(this Quantity quantity, Unit unit) => quantity.PrintIn(unit, NumberStyle.English);

    /// <summary>The quantity converted to another unit of its dimension, in the style of a language.</summary>
    public static string PrintIn(this Quantity quantity, Unit unit, NumberStyle style)
    {
        if (unit == quantity.Unit)
        {
            return quantity.Print(style);
        }

        var converted = quantity.In(unit);
        var decimals = quantity.Form switch
        {
            QuantityForm.PlusMinus => ToleranceDecimals(Tolerance(converted)),
            QuantityForm.Range => ToleranceDecimals(converted.High - converted.Low),
            _ => SignificantDecimals(converted.Nominal, 3),
        };
        return Print(converted, decimals, style);
    }

    /// <summary>The stages, then the angles: <c>20 N·m, 40 ± 3 N·m + 90°</c>.</summary>
    public static string Print(this TighteningTorque torque) =>
        string.Join(", ", torque.Stages.Select(stage => stage.Print())) + string.Concat(torque.Angles.Select(angle => " + " + angle.Print()));

    /// <summary>The limit with its sign: <c>≤ 5 V</c>.</summary>
    public static string Print(this Limit limit) => limit.Print(NumberStyle.English);

    /// <summary>The limit with its sign, in the style of a language.</summary>
    public static string Print(this Limit limit, NumberStyle style) => limit.Relation switch
    {
        LimitRelation.AtMost => "≤ " + limit.Quantity.Print(style),
        LimitRelation.AtLeast => "≥ " + limit.Quantity.Print(style),
        LimitRelation.Less => "< " + limit.Quantity.Print(style),
        LimitRelation.More => "> " + limit.Quantity.Print(style),
        _ => limit.Quantity.Print(style),
    };

    private static double Tolerance(Quantity quantity) => (quantity.High - quantity.Low) / 2;

    private static string Print(Quantity quantity, int decimals, NumberStyle style)
    {
        return WithUnit(
            quantity.Form switch
            {
                QuantityForm.PlusMinus => $"{Written(quantity.Nominal)} ± {Written(Tolerance(quantity))}",
                QuantityForm.Range => $"{Written(quantity.Low)} {style.To} {Written(quantity.High)}",
                _ => Written(quantity.Nominal),
            },
            quantity.Unit);

        string Written(double value) => style.Write(Number(value, decimals));
    }

    // A degree of angle stands right at its number; every other unit after a space (NIST SP 811, 7.2).
    private static string WithUnit(string number, Unit unit) =>
        unit.Symbol.Length == 0 ? number : unit.Symbol == "°" ? number + "°" : $"{number} {unit.Symbol}";

    private static string Number(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        var format = "F" + decimals.ToString(CultureInfo.InvariantCulture);
        return (rounded == 0 ? 0 : rounded).ToString(format, CultureInfo.InvariantCulture);
    }

    /// <summary>The decimals of the shortest decimal number that means the value, up to noise.</summary>
    private static int WrittenDecimals(double value)
    {
        var most = Math.Clamp(SignificantDecimals(value, WrittenDigits), 0, 15);
        var text = Number(value, most);
        var point = text.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? 0 : text.TrimEnd('0').Length - point - 1;
    }

    /// <summary>The decimals that a tolerance is worth.</summary>
    private static int ToleranceDecimals(double tolerance)
    {
        var leading = tolerance <= 0 ? 0 : Math.Round(tolerance / Math.Pow(10, Math.Floor(Math.Log10(tolerance)) - 2));
        return SignificantDecimals(tolerance, leading > 354 ? 1 : 2);
    }

    /// <summary>The decimals that show so many significant digits of the value.</summary>
    private static int SignificantDecimals(double value, int digits) =>
        value == 0 || !double.IsFinite(value) ? 0 : Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 15);

    private static string? AsFraction(double value)
    {
        var parts = value * FinestFraction;
        if (value <= 0 || value >= 1000 || parts != Math.Floor(parts) || value == Math.Floor(value))
        {
            return null;
        }

        var whole = (int)Math.Floor(value);
        var (numerator, denominator) = ((int)parts - (whole * FinestFraction), FinestFraction);
        while (numerator % 2 == 0)
        {
            (numerator, denominator) = (numerator / 2, denominator / 2);
        }

        return whole == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{numerator}/{denominator}")
            : string.Create(CultureInfo.InvariantCulture, $"{whole} {numerator}/{denominator}");
    }
}
