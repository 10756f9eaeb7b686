using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Quantities;

/// <summary>A measured value with its tolerance or range, in the unit it was written in.</summary>
/// <param name="Nominal">The value; of a range the middle.</param>
/// <param name="Low">The least that is right.</param>
/// <param name="High">The most that is right.</param>
/// <param name="Unit">The unit of all three.</param>
/// <param name="Form">How it was written.</param>
public sealed record Quantity(double Nominal, double Low, double High, Unit Unit, QuantityForm Form)
{
    /// <summary>The nominal value in the base unit of the dimension.</summary>
    public double BaseValue => (Nominal * Unit.Factor) + Unit.Offset;

    /// <summary>The same quantity in another unit of the same dimension.</summary>
    public Quantity In(Unit other)
    {
        double Convert(double value) => ((value * Unit.Factor) + Unit.Offset - other.Offset) / other.Factor;
        return new Quantity(Convert(Nominal), Convert(Low), Convert(High), other, Form);
    }
}
