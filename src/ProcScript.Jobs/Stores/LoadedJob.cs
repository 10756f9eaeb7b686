using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;

namespace ProcScript.Jobs.Stores;

/// <summary>A job with its journal played.</summary>
/// <param name="Name">The job's name in the store.</param>
/// <param name="Journal">The journal as far as it holds.</param>
/// <param name="Replay">What it comes to.</param>
public sealed record LoadedJob(string Name, JournalReading Journal, JobReplay Replay)
{
    /// <summary>The folder of the frozen library.</summary>
    public const string LibraryFolder = "library";

    /// <summary>The folder of the frozen cards.</summary>
    public const string PackFolder = "pack";

    /// <summary>The folder of photos.</summary>
    public const string PhotoFolder = "photos";

    /// <summary>The hash of the last line.</summary>
    public string LastHash => Journal.Lines is [.., var last] ? last.Hash : JournalText.NoHash;

    /// <summary>Reads a job and plays its journal.</summary>
    /// <param name="store">Where it is kept.</param>
    /// <param name="name">Its name.</param>
    /// <param name="stop">Ends the work.</param>
    /// <param name="memory">The courses of other jobs, for who reads many; null for none.</param>
    /// <exception cref="JobStoreException">There is no such job, or what its plan was made from is not as it was.</exception>
    public static async Task<LoadedJob> ReadAsync(IJobStore store, string name, CancellationToken stop, CourseMemory? memory = null)
    {
        ArgumentNullException.ThrowIfNull(store);
        memory ??= new CourseMemory();
        var journal = await store.ReadAsync(name, stop);
        if (journal.Lines is not [{ Event.Job: { } head }, ..])
        {
            throw new JobStoreException(journal.Fault is { } fault
                ? $"the journal of '{name}' is damaged in line {fault.Line}: {fault.Problem}."
                : $"the journal of '{name}' does not begin with a job that is opened.");
        }

        var course = memory.CourseOf(await FilesAsync(store, name, LibraryFolder, stop), head.Name, head.With, stop);
        if (course is null)
        {
            throw new JobStoreException($"what the plan of '{name}' was made from does not come to a proven procedure '{head.Name}' any more: the files below '{LibraryFolder}' were changed, or this version of the program judges otherwise than {head.Program}. The journal itself and the cards below '{PackFolder}' can still be read.");
        }

        var newer = new Dictionary<string, JobCourse?>(StringComparer.Ordinal);
        foreach (var folder in journal.Lines.Select(line => line.Event).Where(happened => happened is { Kind: EventKind.Rebased, File: not null }).Select(happened => happened.File!))
        {
            newer[folder] = memory.CourseOf(await FilesAsync(store, name, folder, stop), head.Name, head.With, stop);
        }

        var replay = JobReplay.Of(course, journal.Lines.Select(line => line.Event), happened => newer.GetValueOrDefault(happened.File ?? ""));
        if (course.Plan.Revision != head.Revision)
        {
            replay.Doubt($"this version of the program makes other cards of the frozen texts than {head.Program} did: go by the printed cards, and by what the journal says");
        }

        return new LoadedJob(name, journal, replay);
    }

    private static async Task<IReadOnlyDictionary<string, byte[]>> FilesAsync(IJobStore store, string name, string folder, CancellationToken stop)
    {
        var files = ImmutableDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        foreach (var path in await store.ListFilesAsync(name, folder, stop))
        {
            files[path[(folder.Length + 1)..]] = await store.ReadFileAsync(name, path, stop) ?? throw new JobStoreException($"the file '{path}' of '{name}' is gone.");
        }

        return files.ToImmutable();
    }
}
