using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;

namespace ProcScript.Jobs.Tests;

/// <summary>The jobs of the demo library, checked once.</summary>
internal static class DemoJobs
{
    private static readonly string Root = Path.Combine(Checkout.Root, "procedures");

    /// <summary>Every file of the library by its path.</summary>
    public static IReadOnlyDictionary<string, byte[]> Files { get; } = Directory.EnumerateFiles(Root, "*", SearchOption.AllDirectories)
        .ToDictionary(path => Path.GetRelativePath(Root, path).Replace('\\', '/'), File.ReadAllBytes, StringComparer.Ordinal);

    /// <summary>What the check says.</summary>
    public static LibraryReport Report { get; } = LibraryCheck.Run(new FrozenLibrary(Files));

    /// <summary>The proven procedures, each once.</summary>
    public static ImmutableArray<ProcedureReport> All { get; } = [.. Report.Procedures.Where(report => report.IsProven).DistinctBy(report => report.Procedure.Job)];

    /// <summary>The course of a job.</summary>
    public static JobCourse Course(string job) => JobCourse.Of(All.First(report => report.Procedure.Job == job))!;

    /// <summary>The event that opens a job.</summary>
    public static JobEvent Opened(JobCourse course) => new()
    {
        Id = "opened",
        Kind = EventKind.Opened,
        At = Day,
        Logged = Day,
        By = "Kern",
        Plan = course.Plan.Revision,
        Job = new JobHead("1", course.Plan.Job, course.Plan.Title, course.Plan.Machine, course.Plan.MachineTitle, "K-1", "4711", [.. course.Plan.Variant.Where(option => option.Present).Select(option => option.Name)], course.Plan.Revision, course.Steps.Length, "procscript 0"),
    };

    /// <summary>When everything happens.</summary>
    public static DateTimeOffset Day { get; } = new(2026, 3, 1, 8, 0, 0, TimeSpan.FromHours(1));

    /// <summary>An event with the number that follows.</summary>
    public static JobEvent Next(JobReplay replay, EventKind kind) => new()
    {
        Id = $"e{replay.Events.Count + 1}",
        Number = replay.Events.Count + 1,
        Kind = kind,
        At = Day.AddMinutes(replay.Events.Count),
        By = "Kern",
        Plan = replay.Course.Plan.Revision,
    };

    /// <summary>A job that was just opened.</summary>
    public static JobReplay Begin(JobCourse course) => JobReplay.Of(course, [Opened(course) with { Number = 1 }]);

    /// <summary>Ticks a step.</summary>
    public static JobReplay Do(this JobReplay replay, int step, int? count = null) => replay.With(Next(replay, EventKind.Done) with { Step = step, Count = count });
}
