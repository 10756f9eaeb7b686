using System.Collections.Immutable;
using ProcScript.Analysis.Expecting;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Auditing;

/// <summary>Makes single mistakes in a library, one at a time, and says which of them a check would notice.</summary>
public static class LibraryAudit
{
    /// <summary>Makes every mistake and checks the library with it. The same library gives the same report, however many threads take part.</summary>
    /// <param name="store">The library; it is only read.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="sound">A check of the library as it is, without errors.</param>
    /// <param name="isAskedAbout">The files in which mistakes are made.</param>
    /// <param name="expectations">What the library expects of itself, and is met.</param>
    /// <param name="progress">Told how many mistakes were tried, of how many; from several threads.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static AuditReport Run(
        ISourceStore store,
        CheckSettings settings,
        LibraryReport sound,
        Predicate<string> isAskedAbout,
        IReadOnlyCollection<ExpectFile> expectations,
        Action<int, int>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(sound);
        ArgumentNullException.ThrowIfNull(isAskedAbout);
        ArgumentNullException.ThrowIfNull(expectations);
        Mistake[] mistakes = [.. MistakeSeeds.In(sound.Library, isAskedAbout)];
        var known = Counts(sound);
        var (plans, reading) = (new SoundPlans(sound), new SurvivalReading(sound));
        var tried = new TriedMistake[mistakes.Length];
        var (next, done) = (-1, 0);
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount };
        // Each thread has a library of its own, in which one file after the other gets one mistake after the other.
        Parallel.For(0, Math.Min(options.MaxDegreeOfParallelism, mistakes.Length), options, _ =>
        {
            var library = new AuditedLibrary(store, settings);
            for (var at = Interlocked.Increment(ref next); at < mistakes.Length; at = Interlocked.Increment(ref next))
            {
                var mistake = mistakes[at];
                var text = sound.Library.Trees[mistake.Place.Path].Text.Content;
                tried[at] = Judge(mistake, library.Check(mistake.Place.Path, mistake.In(text), cancellation));
                progress?.Invoke(Interlocked.Increment(ref done), mistakes.Length);
            }
        });
        return new AuditReport([.. tried]);

        TriedMistake Judge(Mistake mistake, LibraryReport report)
        {
            var counts = Counts(report);
            var worst = report.Findings
                .Where(one => counts[Key(one)] > known.GetValueOrDefault(Key(one)))
                .OrderByDescending(one => one.Severity)
                .FirstOrDefault();
            if (worst is not null)
            {
                return new TriedMistake(mistake, worst.Severity, worst.Finding.Rule.Code, IsUnexpected: false, []);
            }

            var made = new MistakenPlans(plans, mistake.Place.Path);
            var check = new ExpectCheck(report, made.Of);
            if (expectations.Any(file => !check.Judge(file).IsEmpty))
            {
                return new TriedMistake(mistake, null, null, IsUnexpected: true, []);
            }

            ImmutableArray<string> packs = [.. OtherPacks(report, mistake.Place.Path, made)];
            return new TriedMistake(mistake, null, null, IsUnexpected: false, packs) { Survival = reading.Of(mistake, made.OtherParts) };
        }

        // Of each job the variants with no option and with all: between them they have every fact, and making all plans would take longest.
        static IEnumerable<string> OtherPacks(LibraryReport report, string path, MistakenPlans made) => report.Procedures
            .Where(one => one.Procedure.Sees(path))
            .GroupBy(one => one.Procedure.Name, StringComparer.Ordinal)
            .Where(procedure => procedure
                .GroupBy(one => one.Procedure.Job, StringComparer.Ordinal)
                .SelectMany(job => new[] { job.MinBy(one => one.Options.Length)!, job.MaxBy(one => one.Options.Length)! }.Distinct())
                .Any(made.IsOtherwise))
            .Select(procedure => procedure.Key)
            .Order(StringComparer.Ordinal);
    }

    private static Dictionary<(string Code, string Path, Severity Severity), int> Counts(LibraryReport report) => report.Findings.CountBy(Key).ToDictionary();

    private static (string Code, string Path, Severity Severity) Key(ReportedFinding one) => (one.Finding.Rule.Code, one.Finding.Primary.Path, one.Severity);
}
