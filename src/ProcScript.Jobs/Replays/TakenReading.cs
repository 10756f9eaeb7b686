using ProcScript.Jobs.Journals;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Jobs.Replays;

/// <summary>A reading that was taken.</summary>
/// <param name="Event">The event that tells of it.</param>
/// <param name="Step">The step; 0 where it belongs to none.</param>
/// <param name="Text">What was read.</param>
/// <param name="Value">What it came to, as it was written down.</param>
/// <param name="Limits">What it must be, in words; empty where it may be anything.</param>
/// <param name="Verdict">How it compares.</param>
public sealed record TakenReading(JobEvent Event, int Step, string Text, string Value, string Limits, ReadingVerdict Verdict);

/// <summary>How a reading compares with what it must be.</summary>
public enum ReadingVerdict
{
    /// <summary>It may be anything, or is as it must be.</summary>
    Good,

    /// <summary>It is not as it must be.</summary>
    Out,

    /// <summary>What was written down is no quantity of the sort that was asked for.</summary>
    Unreadable,
}

/// <summary>Compares what was written down with what it must be.</summary>
public static class ReadingCheck
{
    /// <summary>As far as the digits of a reading go, so that a limit itself is within; a ratio.</summary>
    private const double Rounding = 1e-9;

    /// <summary>How a reading compares.</summary>
    /// <param name="value">What was written down; without a unit it is in that of the limit.</param>
    /// <param name="limit">What it must be; null where it may be anything.</param>
    public static ReadingVerdict Compare(string value, Limit? limit)
    {
        if (limit is null)
        {
            return ReadingVerdict.Good;
        }

        if (Quantity(value, limit.Quantity.Unit) is not { } read)
        {
            return ReadingVerdict.Unreadable;
        }

        var slack = Rounding * Math.Max(1, Math.Abs(read.BaseValue));
        var (low, high) = (Base(limit.Quantity, limit.Quantity.Low), Base(limit.Quantity, limit.Quantity.High));
        var good = limit.Relation switch
        {
            LimitRelation.Within => read.BaseValue >= low - slack && read.BaseValue <= high + slack,
            LimitRelation.AtMost => read.BaseValue <= high + slack,
            LimitRelation.AtLeast => read.BaseValue >= low - slack,
            LimitRelation.Less => read.BaseValue < high - slack,
            _ => read.BaseValue > low + slack,
        };
        return good ? ReadingVerdict.Good : ReadingVerdict.Out;
    }

    /// <summary>What was written down as a quantity; null where it is none of that dimension.</summary>
    /// <param name="value">What was written down.</param>
    /// <param name="unit">The unit that is meant where none is written.</param>
    public static Quantity? Quantity(string value, Unit unit)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(unit);
        var written = value.Trim();
        var isBelow = written.StartsWith('-') || written.StartsWith('\u2212');
        var size = isBelow ? written[1..].Trim() : written;
        var read = QuantityText.Read(size, "reading", unit.Dimension).Quantity ?? QuantityText.Read($"{size} {unit.Symbol}", "reading", unit.Dimension).Quantity;
        return read is not null && isBelow ? read with { Nominal = -read.Nominal, Low = -read.High, High = -read.Low } : read;
    }

    private static double Base(Quantity quantity, double value) => (quantity with { Nominal = value }).BaseValue;
}
