using System.Globalization;
using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Bolts;

/// <summary>A thread by its marking.</summary>
/// <param name="System">Metric or inch.</param>
/// <param name="Diameter">The nominal diameter in mm.</param>
/// <param name="Pitch">The pitch in mm.</param>
/// <param name="Series">The series as marked, such as <c>UNC</c>; null where the marking names none.</param>
public sealed partial record ThreadDesignation(ThreadSystem System, double Diameter, double Pitch, string? Series = null)
{
    /// <summary>Millimetres in an inch, exact by definition.</summary>
    internal const double Inch = 25.4;

    /// <summary>
    /// The tensile stress area in mm²: π/4 (d − 0.9382 P)² for metric threads (ISO 898-1; from memory, its rounded values M4 to M16
    /// read), π/4 (d − 0.9743/n)² for inch threads (ASME B1.1; read in a table of SAE J429 bolts). Null where the pitch is too coarse
    /// for the diameter to be a thread at all.
    /// </summary>
    public double? StressArea
    {
        get
        {
            var core = Diameter - ((System == ThreadSystem.Metric ? 0.9382 : 0.9743) * Pitch);
            return core > Diameter / 2 ? Math.PI / 4 * core * core : null;
        }
    }

    /// <summary>The number of a screw size below 1/4 in, such as 10 of <c>#10-24</c>; null for all others.</summary>
    public int? Number { get; private init; }

    /// <summary>Whether it is left-handed, so that it undoes clockwise.</summary>
    public bool IsLeftHand { get; private init; }

    /// <summary>Whether a marking, of whatever sort of thread, has the <c>LH</c> of a left-hand one (ISO 965-1, ASME B1.1; from memory).</summary>
    /// <param name="marking">The thread as marked.</param>
    public static bool SaysLeftHand(string? marking) => marking is not null && LeftHandMark().IsMatch(marking);

    /// <summary>
    /// Reads a marking: <c>M8x1.25</c>, <c>M8</c> (coarse), <c>M10x1</c>, <c>M8x1.25-6g</c>, <c>1/4-20</c>, <c>3/8-16 UNC</c>,
    /// <c>1 1/8-7 UNC-2A</c>, <c>#10-24</c>, <c>No. 8-32 UNC</c>, left-handed ones with <c>LH</c>: <c>M8x1.25-LH</c>, <c>1/2-13 UNC-2A-LH</c>.
    /// </summary>
    /// <returns>The thread; null for anything else, and for no text at all.</returns>
    public static ThreadDesignation? Parse(string? marking)
    {
        if (string.IsNullOrWhiteSpace(marking))
        {
            return null;
        }

        var text = marking.Trim();
        var thread = MetricMarking().Match(text) is { Success: true } metric ? ReadMetric(metric)
            : UnifiedMarking().Match(text) is { Success: true } unified ? ReadUnified(unified)
            : null;
        return thread is not null && SaysLeftHand(text) ? thread with { IsLeftHand = true } : thread;
    }

    private static ThreadDesignation? ReadMetric(Match match)
    {
        var diameter = Value(match.Groups["d"]);
        var pitch = match.Groups["p"].Success ? Value(match.Groups["p"]) : ThreadSeries.CoarsePitch(diameter);
        return diameter > 0 && pitch is > 0 ? new(ThreadSystem.Metric, diameter, pitch.Value) : null;
    }

    private static ThreadDesignation? ReadUnified(Match match)
    {
        var perInch = Value(match.Groups["n"]);
        if (perInch <= 0)
        {
            return null;
        }

        var series = match.Groups["series"] is { Success: true, Value: var written } ? written : null;
        var isFraction = match.Groups["over"].Success;
        var whole = match.Groups["whole"].Success ? Value(match.Groups["whole"]) : 0;

        // A whole number is a screw size where it is marked so, or where that screw size has this thread: 8-32 is No. 8, 1-8 is one inch.
        if (!isFraction && (match.Groups["mark"].Success || ThreadSeries.IsNumbered(whole, perInch)))
        {
            return whole <= 12
                ? new(ThreadSystem.Unified, (0.060 + (0.013 * whole)) * Inch, Inch / perInch, series) { Number = (int)whole }
                : null;
        }

        if (isFraction && Value(match.Groups["under"]) == 0)
        {
            return null;
        }

        var inches = whole + (isFraction ? Value(match.Groups["over"]) / Value(match.Groups["under"]) : 0);
        return inches is > 0 and <= 4 ? new(ThreadSystem.Unified, inches * Inch, Inch / perInch, series) : null;
    }

    private static double Value(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<![A-Za-z])LH(?![A-Za-z])", RegexOptions.CultureInvariant)]
    private static partial Regex LeftHandMark();

    [GeneratedRegex(@"^M(?<d>\d{1,3}(\.\d{1,2})?)(\s?[x×]\s?(?<p>\d{1,2}(\.\d{1,3})?))?(\s?-\s?\d[a-zA-Z](\d[a-zA-Z])?)?(\s?-?\s?LH)?$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex MetricMarking();

    [GeneratedRegex(@"^(?<mark>#|No\.?\s?)?(((?<whole>\d{1,2})[ -])?(?<over>\d{1,2})/(?<under>\d{1,2})|(?<whole>\d{1,2}))\s?-\s?(?<n>\d{1,2}(\.\d)?)(\s?(?<series>UNC|UNF|UNEF|UNS|UN))?(\s?-\s?[123][AB])?(\s?-?\s?LH)?$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex UnifiedMarking();
}
