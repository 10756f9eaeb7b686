using System.Collections.Immutable;
using System.Text;
using ProcScript.Analysis;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Jobs.Freezing;

/// <summary>A job with all that its plan is made from: whoever has the files makes the same plan from them.</summary>
/// <param name="Course">The course.</param>
/// <param name="Library">The files that it is made from, by their paths in the library.</param>
/// <param name="Settings">What the shop has chosen for it.</param>
public sealed record FrozenJob(JobCourse Course, IReadOnlyDictionary<string, byte[]> Library, PathSettings Settings)
{
    /// <summary>Gathers what a job's plan is made from.</summary>
    /// <param name="report">The procedure, proven.</param>
    /// <param name="library">The library.</param>
    /// <param name="stop">Ends the work.</param>
    /// <returns>Null where what is gathered does not come to the same plan.</returns>
    public static FrozenJob? Of(ProcedureReport report, ISourceStore library, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(library);
        var told = SettingsReader.Read(library).Translation is null ? JobCourse.Of(report) : CourseOf(library, report.Procedure.Job, report.Options, stop);
        if (told is not { } wanted)
        {
            return null;
        }

        // What the procedure is made from is mostly enough; where something else has a bearing on its plan, all is taken.
        foreach (var paths in (IReadOnlyList<string>[])[[.. wanted.Plan.Sources.Order(StringComparer.Ordinal)], library.Paths])
        {
            var noted = new NotedLibrary(library, paths);
            if (CourseOf(noted, wanted.Plan.Job, report.Options, stop) is null)
            {
                continue;
            }

            var files = noted.Texts.ToDictionary(text => text.Key, text => Encoding.UTF8.GetBytes(text.Value), StringComparer.Ordinal);
            foreach (var (path, figure) in noted.Figures)
            {
                if (figure.Content(FigureLimits.MostBytes) is { Length: > 0 } bytes)
                {
                    files[path] = bytes;
                }
            }

            if (CourseOf(files, wanted.Plan.Job, report.Options, stop) is { } course && course.Plan.Revision == wanted.Plan.Revision)
            {
                return new FrozenJob(course, files, report.Outcome.OwnSettings);
            }
        }

        return null;
    }

    /// <summary>Makes the course again from what was gathered; null where it does not come to a proven one.</summary>
    /// <param name="files">The files.</param>
    /// <param name="job">The procedure with its arguments.</param>
    /// <param name="with">The options that the machine has.</param>
    /// <param name="stop">Ends the work.</param>
    public static JobCourse? CourseOf(IReadOnlyDictionary<string, byte[]> files, string job, ImmutableArray<string> with, CancellationToken stop) =>
        CourseOf(new FrozenLibrary(files), job, with, stop);

    private static JobCourse? CourseOf(ISourceStore library, string job, ImmutableArray<string> with, CancellationToken stop)
    {
        // Cards in another language than the authors' are made from the translated texts.
        var settings = SettingsReader.Read(library);
        var read = settings.Translation is { } translation ? translation.Over(library) : library;
        var report = LibraryCheck.Run(read, settings with { Translation = null }, stop);
        return report.Procedures.FirstOrDefault(one => one.Procedure.Job == job && one.Options.ToHashSet(StringComparer.Ordinal).SetEquals(with)) is { } found ? JobCourse.Of(found) : null;
    }
}
