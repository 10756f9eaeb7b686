using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Bolts;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// What tells loose pieces of hardware apart. Two pieces are <b>look-alikes</b> when they fit each other's holes (the same thread) and
/// are not the same piece: another length, grade, coating, head, or one with oil or thread locker on it. The torque does not count,
/// for it belongs to the place and not to the piece; neither does single use, for what is used once is in no bag. Kinds without a length
/// may differ by it, so each is a sort of its own.
/// </summary>
internal static class HardwareSort
{
    /// <summary>What a piece fits; null where nothing is known to fit the same.</summary>
    public static string? Hole(Kind kind) =>
        kind is { Category: KindCategory.Fastener, Thread: { } thread } ? Normalized(thread) : null;

    /// <summary>The same for the same piece, and something else for any other.</summary>
    public static string Of(Kind kind) => kind.Length is not { } length
        ? kind.Name
        : string.Join(
            '|',
            length.BaseValue.ToString("0.######", CultureInfo.InvariantCulture),
            kind.Grade,
            kind.Coating,
            kind.Drive?.Name,
            kind.ThreadLocker,
            kind.Oiled);

    /// <summary>Whether two pieces fit each other's holes and are not the same.</summary>
    public static bool AreLookAlikes(Kind one, Kind other) =>
        Hole(one) is { } hole && hole == Hole(other) && Of(one) != Of(other);

    /// <summary>The piece in words that tell it from its look-alikes: its title, with what of its length, grade and coating that lacks.</summary>
    public static string Words(Kind kind) => string.Join(", ", Marks(kind)
        .Where(mark => !kind.Title.Contains(mark.InATitle, StringComparison.OrdinalIgnoreCase))
        .Select(mark => mark.Words)
        .Prepend(kind.Title));

    /// <summary>How two look-alikes differ, in words: <c>length 25 mm and 40 mm</c>.</summary>
    public static ImmutableArray<string> Differences(Kind one, Kind other)
    {
        var differences = ImmutableArray.CreateBuilder<string>();
        Compare("length", one.Length?.Print(), other.Length?.Print());
        Compare("grade", one.Grade, other.Grade);
        Compare("coating", one.Coating, other.Coating);
        Compare("drive", one.Drive?.Title, other.Drive?.Title);
        Compare("thread locker", YesOrNo(one.ThreadLocker), YesOrNo(other.ThreadLocker));
        Compare("oil", YesOrNo(one.Oiled), YesOrNo(other.Oiled));
        return differences.ToImmutable();

        void Compare(string name, string? left, string? right)
        {
            if (left != right)
            {
                differences.Add($"{name} {left ?? "not given"} and {right ?? "not given"}");
            }
        }
    }

    private static string YesOrNo(bool has) => has ? "yes" : "no";

    private static IEnumerable<(string InATitle, string Words)> Marks(Kind kind)
    {
        if (kind.Length is { } length)
        {
            yield return (length.Nominal.ToString("0.###", CultureInfo.InvariantCulture), length.Print());
        }

        if (kind.Grade is { } grade)
        {
            yield return (grade, grade);
        }

        if (kind.Coating is { } coating)
        {
            yield return (coating, coating);
        }
    }

    /// <summary>One spelling for a thread, so that <c>M8</c> is <c>M8x1.25</c>; a marking that is not understood stands for itself.</summary>
    private static string Normalized(string thread)
    {
        var upper = thread.ToUpperInvariant();
        return (ThreadDesignation.Parse(thread) ?? ThreadDesignation.Parse(upper.Replace('X', 'x'))) is { } known
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{known.System} {known.Diameter:0.####} {known.Pitch:0.####}{(upper.EndsWith("LH", StringComparison.Ordinal) ? " LH" : "")}")
            : string.Concat(upper.Where(mark => !char.IsWhiteSpace(mark)));
    }
}
