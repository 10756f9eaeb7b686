using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Postgres;

/// <summary>Puts jobs from one store into another, journals and all: each line is the same there, to its hash.</summary>
internal static class BroughtIn
{
    private static readonly string[] Folders = [LoadedJob.LibraryFolder, LoadedJob.PackFolder, LoadedJob.PhotoFolder];

    /// <summary>Puts in what is not there yet, and says what.</summary>
    /// <param name="from">The store that they come from.</param>
    /// <param name="into">The store that they go into.</param>
    /// <param name="told">Where it is said.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">A job of that name is there and is another.</exception>
    public static async Task FromAsync(IJobStore from, IJobStore into, TextWriter told, CancellationToken stop)
    {
        var there = (await into.ListAsync(stop)).ToHashSet(StringComparer.Ordinal);
        foreach (var job in await from.ListAsync(stop))
        {
            var journal = await from.ReadAsync(job, stop);
            if (journal.Fault is { } fault || journal.Lines.IsEmpty)
            {
                throw new JobStoreException($"the journal of '{job}' is damaged in line {journal.Fault?.Line ?? 1}: nothing of it was put in.");
            }

            if (!there.Contains(job))
            {
                await into.CreateAsync(job, await FilesAsync(from, job, stop), journal.Lines[0].Event, stop);
            }

            foreach (var line in journal.Lines.Skip(1))
            {
                if ((await into.AppendAsync(job, line.Event, stop)).Line.Hash != line.Hash)
                {
                    throw new JobStoreException($"'{job}' is in the database already and went another way there since event {line.Event.Number}. Put it in under another name.");
                }
            }

            await told.WriteLineAsync($"{job}: {journal.Lines.Length} events");
        }
    }

    private static async Task<Dictionary<string, byte[]>> FilesAsync(IJobStore from, string job, CancellationToken stop)
    {
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var folder in Folders.Concat((await from.ReadAsync(job, stop)).Lines.Select(line => line.Event.File).OfType<string>()).Distinct(StringComparer.Ordinal))
        {
            foreach (var path in await from.ListFilesAsync(job, folder, stop))
            {
                files[path] = await from.ReadFileAsync(job, path, stop) ?? throw new JobStoreException($"the file '{path}' of '{job}' is gone.");
            }
        }

        return files;
    }
}
