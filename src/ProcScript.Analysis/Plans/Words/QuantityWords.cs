using System.Globalization;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Quantities as cards print them: in the unit they were written in, and torques in both units of the shop.</summary>
internal static class QuantityWords
{
    private static readonly Unit NewtonMetre = new("N·m", Dimension.Torque, 1);

    /// <summary>A pound-force of 0.45359237 kg × 9.80665 m/s² at one foot of 0.3048 m: exact by definition.</summary>
    private static readonly Unit PoundForceFoot = new("lbf·ft", Dimension.Torque, 0.45359237 * 9.80665 * 0.3048);

    /// <summary>As written: <c>22 ± 2 N·m</c>, <c>0.5 to 2 L/min</c>, <c>90 s</c>.</summary>
    public static string Of(Quantity quantity) => Of(quantity, Number);

    /// <summary>In N·m first and lbf·ft after it: <c>22 ± 2 N·m (16.2 ± 1.5 lbf·ft)</c>.</summary>
    public static string Torque(Quantity torque) => $"{InUnit(torque, NewtonMetre)} ({InUnit(torque, PoundForceFoot)})";

    /// <summary>The nominal value of a torque in N·m, as a bare number.</summary>
    public static string NewtonMetres(Quantity torque) =>
        torque.Unit.Symbol == NewtonMetre.Symbol ? Number(torque.Nominal) : Places(torque.BaseValue)(torque.BaseValue);

    /// <summary>What a reading must be: <c>at most 5 V</c>.</summary>
    public static string Of(Limit limit) => limit.Relation switch
    {
        LimitRelation.AtMost => $"at most {Of(limit.Quantity)}",
        LimitRelation.AtLeast => $"at least {Of(limit.Quantity)}",
        LimitRelation.Less => $"less than {Of(limit.Quantity)}",
        LimitRelation.More => $"more than {Of(limit.Quantity)}",
        _ => Of(limit.Quantity),
    };

    /// <summary>A number with as many places as it needs.</summary>
    public static string Number(double value) =>
        // A decimal drops the noise of binary fractions (0.87 − 0.85) and never falls into powers of ten.
        Math.Abs(value) < 1e15
            ? ((decimal)value).ToString(CultureInfo.InvariantCulture)
            : value.ToString(CultureInfo.InvariantCulture);

    private static string InUnit(Quantity quantity, Unit unit) =>
        quantity.Unit.Symbol == unit.Symbol ? Of(quantity) : Of(quantity.In(unit), Places(quantity.In(unit).Nominal));

    private static string Of(Quantity quantity, Func<double, string> number)
    {
        var value = quantity.Form switch
        {
            QuantityForm.PlusMinus => $"{number(quantity.Nominal)} ± {number(quantity.High - quantity.Nominal)}",
            QuantityForm.Range => $"{number(quantity.Low)} to {number(quantity.High)}",
            _ => number(quantity.Nominal),
        };
        return quantity.Unit.Symbol.Length == 0 ? value : $"{value} {quantity.Unit.Symbol}";
    }

    /// <summary>A converted value is given to three figures, so that it claims no more than the written one; its tolerance likewise.</summary>
    private static Func<double, string> Places(double nominal)
    {
        var format = Math.Abs(nominal) switch
        {
            >= 100 => "F0",
            >= 10 => "F1",
            >= 1 => "F2",
            _ => "F3",
        };
        return value => value.ToString(format, CultureInfo.InvariantCulture);
    }
}
