using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Mending;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Learning;

/// <summary>
/// What pieces that broke, or were not there, say of the spares. All joints of a kind count together. A share of spares is too small, or too large, where
/// it lies outside the range in which the true share is with 95 % confidence, by the pieces that were handled.
/// </summary>
internal static class PieceLessons
{
    /// <summary>In so many jobs pieces have to break before it is more than bad luck.</summary>
    private const int MoreThanBadLuck = 2;

    private const double Confidence95 = 1.959964;

    /// <summary>The lessons.</summary>
    /// <param name="seen">What was handled of each item as it is now, and the job.</param>
    /// <param name="atLeast">How many jobs have to tell the same.</param>
    public static IEnumerable<Lesson> Of(IReadOnlyCollection<(string Job, MachineItem Item, SeenPieces Pieces)> seen, int atLeast) =>
    [
        // What is new each time is on the order list as it is.
        .. seen.Where(one => one.Item is Joint { SingleUse: false }).GroupBy(one => ((Joint)one.Item).Kind.Declared)
            .SelectMany(kind => OfKind(((Joint)kind.First().Item).Kind, [.. Counts(kind)], atLeast)),
        .. seen.Where(one => one.Item is Part).GroupBy(one => one.Item.Declared).SelectMany(part => OfPart((Part)part.First().Item, [.. Counts(part)], atLeast)),
    ];

    private static IEnumerable<JobPieces> Counts(IEnumerable<(string Job, MachineItem Item, SeenPieces Pieces)> seen) => seen
        .GroupBy(one => one.Job, StringComparer.Ordinal)
        .Select(job => new JobPieces(job.Key, job.Sum(one => one.Pieces.Handled), job.Sum(one => one.Pieces.Broke), job.Sum(one => one.Pieces.Lost)))
        .Where(job => job.Handled > 0)
        .OrderBy(job => job.Job, StringComparer.Ordinal);

    private static IEnumerable<Lesson> OfKind(Kind kind, ImmutableArray<JobPieces> jobs, int atLeast)
    {
        if (jobs.Length < atLeast)
        {
            yield break;
        }

        var written = kind.Spare?.BaseValue ?? 0;
        var about = new Lesson(
            LessonSort.Spare, kind.Declared, kind.Title, kind.Spare is null ? "no spares" : $"spare {Percent(written)}", Told(jobs, written), [.. jobs.Select(job => job.Job)]);
        if (jobs.All(job => job.Broke >= job.Handled))
        {
            yield return about with { Change = new PropertyChange(kind.Declared, false, "single", "use") };
            yield break;
        }

        var (gone, handled) = (jobs.Sum(job => job.Gone), jobs.Sum(job => job.Handled));
        var (low, high) = Range(gone, handled);
        var share = written < low && jobs.Count(job => job.Gone > 0) >= MoreThanBadLuck ? RoundedUp((double)gone / handled)
            : written > high ? RoundedUp(high)
            : written;
        if (share != written && Percent(share) != Percent(written))
        {
            yield return about with { Change = new PropertyChange(kind.Declared, false, "spare", Percent(share)) };
        }
    }

    private static IEnumerable<Lesson> OfPart(Part part, ImmutableArray<JobPieces> jobs, int atLeast)
    {
        var broke = jobs.Count(job => job.Gone > 0);
        if (broke < atLeast || part.SingleUse)
        {
            yield break;
        }

        var about = new Lesson(LessonSort.Spare, part.Declared, part.Title, "goes back", $"a new one was needed in {broke} of {Lesson.CountOf(jobs.Length)}", [.. jobs.Where(job => job.Gone > 0).Select(job => job.Job)]);
        yield return jobs.All(job => job.Broke > 0)
            ? about with { Change = new PropertyChange(part.Declared, false, "single", "use") }
            : about with { Otherwise = "A part has no share of spares: have one at hand, or write `single use` where it never serves again." };
    }

    private static string Told(ImmutableArray<JobPieces> jobs, double written)
    {
        var (broke, lost, handled) = (jobs.Sum(job => job.Broke), jobs.Sum(job => job.Lost), jobs.Sum(job => job.Handled));
        var lacking = jobs.Count(job => job.Gone > Math.Ceiling((job.Handled * written) - 1e-9));
        return $"{broke} broke{(lost > 0 ? $" and {lost} {(lost == 1 ? "was" : "were")} missing" : "")} of {handled} pieces, in {jobs.Count(job => job.Gone > 0)} of {Lesson.CountOf(jobs.Length)}"
            + (lacking > 0 ? $"; {Lesson.CountOf(lacking)} needed more than the order list had" : "");
    }

    /// <summary>The range of a share with 95 % confidence (E. B. Wilson 1927): it holds for few pieces and for shares near nothing.</summary>
    private static (double Low, double High) Range(int gone, int handled)
    {
        var (share, z2) = ((double)gone / handled, Confidence95 * Confidence95);
        var middle = share + (z2 / (2 * handled));
        var half = Confidence95 * Math.Sqrt((share * (1 - share) / handled) + (z2 / (4.0 * handled * handled)));
        var whole = 1 + (z2 / handled);
        return (Math.Max(0, (middle - half) / whole), Math.Min(1, (middle + half) / whole));
    }

    /// <summary>Up to whole percents, from a tenth on to five of them.</summary>
    private static double RoundedUp(double share)
    {
        var percent = Math.Ceiling((share * 100) - 1e-9);
        return Math.Min(100, percent <= 10 ? Math.Max(1, percent) : Math.Ceiling(percent / 5) * 5) / 100;
    }

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.##} %");

    private readonly record struct JobPieces(string Job, int Handled, int Broke, int Lost)
    {
        public int Gone => Math.Min(Handled, Broke + Lost);
    }
}
