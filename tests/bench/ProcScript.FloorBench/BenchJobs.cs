using ProcScript.Analysis;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.FloorBench;

/// <summary>Opens jobs of the demo library.</summary>
internal static class BenchJobs
{
    private const string Procedure = "replace_evaporator";

    private static readonly string Root = Path.Combine(Checkout.Root, "procedures");
    private static readonly FrozenJob Frozen = Freeze();

    /// <summary>The files that a job is frozen from, by their paths.</summary>
    public static IReadOnlyDictionary<string, byte[]> Library => Frozen.Library;

    /// <summary>The revision of its cards.</summary>
    public static string Revision => Frozen.Course.Plan.Revision;

    /// <summary>How many steps these have.</summary>
    public static int Steps => Frozen.Course.Steps.Length;

    /// <summary>Opens one.</summary>
    public static Task<string> OpenAsync(IJobStore store) => store.CreateAsync(
        "bench", Frozen.Library.ToDictionary(file => $"{LoadedJob.LibraryFolder}/{file.Key}", file => file.Value), Opened(DateTimeOffset.UtcNow, "B-1"), CancellationToken.None);

    /// <summary>The event that opens one.</summary>
    /// <param name="at">When.</param>
    /// <param name="serial">On which machine.</param>
    public static JobEvent Opened(DateTimeOffset at, string serial)
    {
        var plan = Frozen.Course.Plan;
        return new JobEvent
        {
            Id = "opened",
            Kind = EventKind.Opened,
            At = at,
            Logged = at,
            By = "Bench",
            Plan = plan.Revision,
            Job = new JobHead("1", plan.Job, plan.Title, plan.Machine, plan.MachineTitle, serial, "1", [.. plan.Variant.Where(option => option.Present).Select(option => option.Name)], plan.Revision, Steps, "bench"),
        };
    }

    private static FrozenJob Freeze()
    {
        FrozenLibrary library = new(Directory.EnumerateFiles(Root, "*", SearchOption.AllDirectories).ToDictionary(path => Path.GetRelativePath(Root, path).Replace('\\', '/'), File.ReadAllBytes, StringComparer.Ordinal));
        return FrozenJob.Of(LibraryCheck.Run(library).Procedures.First(report => report.IsProven && report.Procedure.Job == Procedure), library, CancellationToken.None)!;
    }
}
