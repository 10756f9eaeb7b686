using ProcScript.Analysis.Following;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Stores;
using ProcScript.Jobs.Tests;

namespace ProcScript.Floor.Tests;

/// <summary>Opens jobs of the demo library.</summary>
internal static class FloorJobs
{
    /// <summary>A job with an energy, bags and readings that two can do together.</summary>
    public const string Seat = "seat_out";

    /// <summary>A job that is quickly done, and of which a piece can be left off.</summary>
    public static string Small { get; } = DemoJobs.All.Where(report => DemoJobs.Course(report.Procedure.Job).Steps.Any(step => step is { Phase: CoursePhase.Refit, Count: > 1 })).MinBy(report => DemoJobs.Course(report.Procedure.Job).Steps.Length)!.Procedure.Job;

    /// <summary>Opens a job in a store.</summary>
    public static Task<string> OpenAsync(IJobStore store, string job = Seat, string? title = null)
    {
        var report = DemoJobs.All.First(one => one.Procedure.Job == job);
        var frozen = FrozenJob.Of(report, new FrozenLibrary(DemoJobs.Files), CancellationToken.None)!;
        var opened = DemoJobs.Opened(frozen.Course);
        opened = opened with { Job = opened.Job! with { With = report.Options, Title = title ?? opened.Job.Title } };
        return store.CreateAsync($"4711-{job}", frozen.Library.ToDictionary(file => $"{LoadedJob.LibraryFolder}/{file.Key}", file => file.Value), opened, CancellationToken.None);
    }
}
