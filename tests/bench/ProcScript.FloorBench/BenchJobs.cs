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

    /// <summary>Opens one.</summary>
    public static Task<string> OpenAsync(IJobStore store)
    {
        var plan = Frozen.Course.Plan;
        var now = DateTimeOffset.UtcNow;
        JobEvent opened = new()
        {
            Id = "opened",
            Kind = EventKind.Opened,
            At = now,
            Logged = now,
            By = "Bench",
            Plan = plan.Revision,
            Job = new JobHead("1", plan.Job, plan.Title, plan.Machine, plan.MachineTitle, "B-1", "1", [.. plan.Variant.Where(option => option.Present).Select(option => option.Name)], plan.Revision, Frozen.Course.Steps.Length, "bench"),
        };
        return store.CreateAsync("bench", Frozen.Library.ToDictionary(file => $"{LoadedJob.LibraryFolder}/{file.Key}", file => file.Value), opened, CancellationToken.None);
    }

    private static FrozenJob Freeze()
    {
        FrozenLibrary library = new(Directory.EnumerateFiles(Root, "*", SearchOption.AllDirectories).ToDictionary(path => Path.GetRelativePath(Root, path).Replace('\\', '/'), File.ReadAllBytes, StringComparer.Ordinal));
        return FrozenJob.Of(LibraryCheck.Run(library).Procedures.First(report => report.IsProven && report.Procedure.Job == Procedure), library, CancellationToken.None)!;
    }
}
