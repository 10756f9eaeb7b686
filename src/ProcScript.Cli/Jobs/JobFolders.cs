using System.Collections.Immutable;
using ProcScript.Cli.Output;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Learning;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary>The jobs below some folders.</summary>
internal static class JobFolders
{
    /// <summary>Finds them: a folder is a job, or holds some.</summary>
    /// <param name="typed">The folders.</param>
    /// <param name="currentFolder">Where relative paths start from.</param>
    /// <param name="stop">Ends the work.</param>
    /// <returns>The jobs, each once, and how each is named to the user.</returns>
    /// <exception cref="UsageException">One is not there, or holds no job.</exception>
    public static async Task<ImmutableArray<(JobPlace Place, string Name)>> FindAsync(IEnumerable<string> typed, string currentFolder, CancellationToken stop)
    {
        var found = new List<(JobPlace Place, string Name)>();
        foreach (var one in typed)
        {
            if (one.Length == 0 || one.Contains('\0'))
            {
                throw new UsageException("an empty path names no job.");
            }

            var folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(one, currentFolder));
            if (!Directory.Exists(folder))
            {
                throw new UsageException($"there is no folder '{one}': name a job's folder, or one that holds jobs.");
            }

            if (File.Exists(Path.Combine(folder, JournalFile.Name)))
            {
                found.Add((JobPlace.Find(one, currentFolder), one));
                continue;
            }

            FileJobStore store = new(folder);
            var names = await store.ListAsync(stop);
            found.AddRange(names.IsEmpty
                ? throw new UsageException($"'{one}' holds no job: a folder with a {JournalFile.Name} is one. 'procscript job open' opens one.")
                : names.Select(name => (new JobPlace(store, name, store.FolderOf(name)), Path.Combine(one, name))));
        }

        return [.. found.DistinctBy(job => job.Place.Folder)];
    }

    /// <summary>Looks at jobs. One that cannot be used, or only in part, is told of.</summary>
    /// <param name="jobs">The jobs.</param>
    /// <param name="around">The surroundings.</param>
    /// <param name="stop">Ends the work.</param>
    /// <returns>What they tell, and whether any was told of.</returns>
    public static async Task<(ImmutableArray<SeenJob> Seen, bool AreAllUsed)> SeeAsync(ImmutableArray<(JobPlace Place, string Name)> jobs, Surroundings around, CancellationToken stop)
    {
        var seen = ImmutableArray.CreateBuilder<SeenJob>();
        var memory = new CourseMemory();
        var troubles = new List<string>();
        foreach (var (place, name) in jobs)
        {
            stop.ThrowIfCancellationRequested();
            try
            {
                var job = await Task.Run(() => LoadedJob.ReadAsync(place.Store, place.Name, stop, memory), stop).WaitAsync(stop);
                seen.Add(SeenJob.Of(name, job.Replay));
                if (job.Journal.Fault is { } fault)
                {
                    troubles.Add($"the journal of '{name}' is damaged in line {fault.Line}: {fault.Problem}. Only what stands before that line counts; look at a copy.");
                }

                if (job.Replay.Unfollowed.Length > 0)
                {
                    troubles.Add($"'{name}' counts without its steps: {job.Replay.Unfollowed}.");
                }
            }
            catch (JobStoreException failure)
            {
                troubles.Add($"'{name}' is left out: {failure.Message}");
            }
        }

        foreach (var trouble in troubles)
        {
            around.Error.WriteLine(LogCommands.DisarmLines($"procscript: {trouble}"));
        }

        return (seen.ToImmutable(), troubles.Count == 0);
    }
}
