namespace ProcScript.Model.Quantities;

/// <summary>How a language writes numbers.</summary>
/// <param name="DecimalMark">What parts the decimals: a point or a comma.</param>
/// <param name="To">What stands between the ends of a range.</param>
public sealed record NumberStyle(string DecimalMark, string To)
{
    /// <summary>That of English, and of findings.</summary>
    public static NumberStyle English { get; } = new(".", "to");

    /// <summary>A number that was written with a point.</summary>
    public string Write(string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return number.Replace(".", DecimalMark, StringComparison.Ordinal);
    }
}
