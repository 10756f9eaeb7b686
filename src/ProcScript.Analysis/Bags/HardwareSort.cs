using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// What tells loose pieces of hardware apart. Two pieces are <b>look-alikes</b> when they fit each other's holes (the same thread), start in them
/// (<see cref="ThreadFits"/>) or would but for their hand, and are not the same piece: another thread, length, grade, coating, head, or one
/// with oil or thread locker on it. The torque does not count,
/// for it belongs to the place and not to the piece; neither does single use, for what is used once is in no bag. Kinds without a length
/// may differ by it, so each is a sort of its own.
/// </summary>
internal static class HardwareSort
{
    /// <summary>What a piece fits; null where nothing is known to fit the same.</summary>
    public static string? Hole(Kind kind) =>
        kind is { Category: KindCategory.Fastener, Thread: { } thread } ? Normalized(thread) : null;

    /// <summary>The thread of a piece; null where its marking is not understood.</summary>
    public static ThreadDesignation? Thread(Kind kind) => kind.Thread is { } marking ? Parsed(marking) : null;

    /// <summary>Whether pieces of two holes could be put to each other's; the thread is null where its marking is not understood.</summary>
    public static bool FitAlike(string hole, ThreadDesignation? thread, string otherHole, ThreadDesignation? otherThread) =>
        hole == otherHole || (thread is not null && otherThread is not null && ThreadFits.Between(thread, otherThread) != ThreadFit.None);

    /// <summary>The same for the same piece, and something else for any other.</summary>
    public static string Of(Kind kind) => kind.Length is not { } length
        ? kind.Name
        : string.Join(
            '|',
            Hole(kind),
            length.BaseValue.ToString("0.######", CultureInfo.InvariantCulture),
            kind.Grade,
            kind.Coating,
            kind.Drive?.Name,
            kind.ThreadLocker,
            kind.Oiled);

    /// <summary>Whether two pieces could be put to each other's holes and are not the same.</summary>
    public static bool AreLookAlikes(Kind one, Kind other) =>
        Hole(one) is { } hole && Hole(other) is { } otherHole && FitAlike(hole, Thread(one), otherHole, Thread(other)) && Of(one) != Of(other);

    /// <summary>
    /// The piece in words that tell it from its look-alikes: its title, with what of its length, grade and coating that lacks, and of its thread
    /// where one of them has another.
    /// </summary>
    public static string Words(Wordbook book, Kind kind, params IEnumerable<Kind> lookAlikes) => string.Join(", ", Marks(book, kind, lookAlikes.Any(other => Hole(other) != Hole(kind)))
        .Where(mark => !mark.InATitle.Any(said => kind.Title.Contains(said, StringComparison.OrdinalIgnoreCase)))
        .Select(mark => mark.Words)
        .Prepend(ItemWords.Of(kind, book)));

    /// <summary>What goes wrong with two look-alikes, as the rest of a sentence: <c>fit each other's holes</c>.</summary>
    public static string Fit(Kind one, Kind other) =>
        Hole(one) == Hole(other) ? "fit each other's holes"
            : Thread(one)?.IsLeftHand != Thread(other)?.IsLeftHand ? "are alike but for the hand of their threads, and jam in each other's holes"
            : "start in each other's holes and jam";

    /// <summary>How two look-alikes differ, in words: <c>length 25 mm and 40 mm</c>.</summary>
    public static ImmutableArray<string> Differences(Kind one, Kind other)
    {
        var differences = ImmutableArray.CreateBuilder<string>();
        Compare("thread", Hole(one) == Hole(other) ? null : one.Thread, Hole(one) == Hole(other) ? null : other.Thread);
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

    private static IEnumerable<(ImmutableArray<string> InATitle, string Words)> Marks(Wordbook book, Kind kind, bool thread)
    {
        if (thread && kind.Thread is { } marking)
        {
            yield return ([marking, .. SeriesApart(marking)], book.Say("hardware.thread", ("thread", marking)));
        }

        if (kind.Length is { } length)
        {
            yield return ([length.Nominal.ToString("0.###", CultureInfo.InvariantCulture), length.Print()], book.Print(length));
        }

        if (kind.Grade is { } grade)
        {
            yield return ([grade], Thread(kind)?.System == ThreadSystem.Unified ? book.Say("hardware.grade", ("grade", grade)) : grade);
        }

        if (kind.Coating is { } coating)
        {
            yield return ([coating], coating);
        }
    }

    /// <summary>An inch thread without its series, as titles have it: <c>1/4-20</c>. A metric one stands as it is: <c>M8</c> would not tell its pitch.</summary>
    private static IEnumerable<string> SeriesApart(string marking) =>
        Parsed(marking) is { System: ThreadSystem.Unified, IsLeftHand: false } && marking.LastIndexOf(" UN", StringComparison.Ordinal) is > 0 and var series
            ? [marking[..series]]
            : [];

    /// <summary>One spelling for a thread, so that <c>M8</c> is <c>M8x1.25</c>; a marking that is not understood stands for itself.</summary>
    private static string Normalized(string thread)
    {
        return Parsed(thread) is { } known
            ? string.Create(CultureInfo.InvariantCulture, $"{known.System} {known.Diameter:0.####} {known.Pitch:0.####}{(known.IsLeftHand ? " LH" : "")}")
            : string.Concat(thread.ToUpperInvariant().Where(mark => !char.IsWhiteSpace(mark)));
    }

    private static ThreadDesignation? Parsed(string thread) =>
        ThreadDesignation.Parse(thread) ?? ThreadDesignation.Parse(thread.ToUpperInvariant().Replace('X', 'x'));
}
