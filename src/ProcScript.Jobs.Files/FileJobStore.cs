using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Jobs.Files;

/// <summary>
/// Job records in folders: one folder a job, in one folder or in others below it. A job is called as its folder is, wherever that lies, so that its labels
/// still lead to it when it was put away. This is the truth wherever no database is named.
/// </summary>
/// <param name="root">The folder, as a full path.</param>
public sealed class FileJobStore(string root) : IJobStore
{
    private const string Opening = ".opening-";

    /// <summary>The most journals of which is kept what they hold: whichever comes next is read again.</summary>
    private const int MostJournals = 500;

    private readonly ConcurrentDictionary<string, JournalFile> _journals = new(StringComparer.Ordinal);
    private volatile ILookup<string, FoundJob> _found = Enumerable.Empty<FoundJob>().ToLookup(job => job.Name, StringComparer.Ordinal);

    /// <summary>The folder of a job, as a full path; where there is no such job, the one that it would have.</summary>
    /// <param name="job">The job.</param>
    /// <exception cref="JobStoreException">That is no name of a job, two are called so, or it cannot be looked for.</exception>
    public string FolderOf(string job)
    {
        if (!JobNames.IsName(job))
        {
            throw new JobStoreException($"'{job}' is no name of a job: letters, digits, '_', '-' and '.' are.");
        }

        var straight = Path.Combine(root, job);
        var known = _found[job].ToList();
        return known.Where(one => HasJournal(one.Folder)).ToList() switch
        {
            [var one] when known.Count == 1 => one.Folder,
            [_, _, ..] many => throw Several(job, many),
            [] when known.Count == 0 && HasJournal(straight) => straight,
            _ => Look()[job].ToList() switch
            {
                [] => straight,
                [var found] => found.Folder,
                var many => throw Several(job, many),
            },
        };
    }

    /// <inheritdoc/>
    public Task<ImmutableArray<string>> ListAsync(CancellationToken stop) => Task.FromResult<ImmutableArray<string>>([.. Look().Select(job => job.Key).Order(StringComparer.Ordinal)]);

    /// <inheritdoc/>
    public Task<IReadOnlyDictionary<string, JournalStamp>> StampsAsync(CancellationToken stop) =>
        Task.FromResult<IReadOnlyDictionary<string, JournalStamp>>(Look().ToDictionary(job => job.Key, job => job.ToList() is [var one] ? one.Stamp : default, StringComparer.Ordinal));

    /// <inheritdoc/>
    public Task<JournalStamp> StampAsync(string job, CancellationToken stop)
    {
        var path = Path.Combine(FolderOf(job), JournalFile.Name);
        return Task.FromResult(Guarded(path, () => JournalFile.StampOf(new FileInfo(path))));
    }

    /// <inheritdoc/>
    public Task<string> CreateAsync(string wanted, IReadOnlyDictionary<string, byte[]> files, JobEvent opened, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (!JobNames.IsName(wanted))
        {
            throw new JobStoreException($"'{wanted}' is no name of a job: letters, digits, '_', '-' and '.' are.");
        }

        return Task.FromResult(Guarded(Path.Combine(root, wanted), () =>
        {
            FolderFlush.Make(root);
            var hidden = Path.Combine(root, Opening + Guid.NewGuid().ToString("N"));
            try
            {
                Directory.CreateDirectory(hidden);
                foreach (var (path, content) in files)
                {
                    stop.ThrowIfCancellationRequested();
                    WriteNew(Place(hidden, path), content);
                }

                WriteNew(Path.Combine(hidden, JournalFile.Name), JournalText.Write(opened, null).Bytes.Span);
                var name = MoveTo(hidden, wanted, Look());
                FolderFlush.Flush(root);
                return name;
            }
            catch
            {
                TryDelete(hidden);
                throw;
            }
        }));
    }

    /// <inheritdoc/>
    public Task<JournalReading> ReadAsync(string job, CancellationToken stop) => Task.FromResult(Journal(job).Read());

    /// <inheritdoc/>
    public Task<AppendedLine> AppendAsync(string job, JobEvent happened, CancellationToken stop) => Journal(job).AppendAsync(happened, stop);

    /// <inheritdoc/>
    public Task<ImmutableArray<string>> ListFilesAsync(string job, string folder, CancellationToken stop)
    {
        var from = Place(FolderOf(job), folder);
        return Task.FromResult(Guarded<ImmutableArray<string>>(from, () => Directory.Exists(from)
            ?
            [
                .. Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories)
                    .Select(file => $"{folder}/{Path.GetRelativePath(from, file).Replace('\\', '/')}").Where(JobNames.IsPath).Order(StringComparer.Ordinal),
            ]
            : []));
    }

    /// <inheritdoc/>
    public Task<byte[]?> ReadFileAsync(string job, string path, CancellationToken stop)
    {
        var file = Place(FolderOf(job), path);
        return Guarded(file, () => ReadBytesAsync(file, stop));
    }

    /// <inheritdoc/>
    public Task AddFilesAsync(string job, IReadOnlyDictionary<string, byte[]> files, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(files);
        var folder = FolderOf(job);
        foreach (var (path, content) in files)
        {
            var file = Place(folder, path);
            Guarded(file, () =>
            {
                if (!File.Exists(file))
                {
                    WriteNew(file, content);
                }
                else if (!File.ReadAllBytes(file).AsSpan().SequenceEqual(content))
                {
                    throw new JobStoreException($"'{path}' of '{job}' is there already, and is another file.");
                }

                return true;
            });
        }

        return Task.CompletedTask;
    }

    private static async Task<byte[]?> ReadBytesAsync(string file, CancellationToken stop) => File.Exists(file) ? await File.ReadAllBytesAsync(file, stop) : null;

    private JournalFile Journal(string job)
    {
        var folder = FolderOf(job);
        if (!HasJournal(folder))
        {
            throw new JobStoreException($"there is no job '{job}' in '{root}'.");
        }

        if (_journals.Count > MostJournals)
        {
            // Who is about to write into one of them holds its lock, whatever is kept here.
            _journals.Clear();
        }

        return _journals.GetOrAdd(folder, place => new JournalFile(place));
    }

    private static bool HasJournal(string folder) => File.Exists(Path.Combine(folder, JournalFile.Name));

    private ILookup<string, FoundJob> Look() => _found = Guarded(root, () => _found.Count == 0 || Directory.Exists(root)
        ? JobTree.Find(root)
        : throw new DirectoryNotFoundException("the folder of the jobs is away."));

    private JobStoreException Several(string job, List<FoundJob> all) =>
        new($"several jobs are called '{job}': {string.Join(" and ", all.Select(one => $"'{Path.GetRelativePath(root, one.Folder)}'").Order(StringComparer.Ordinal))}. Take away or rename what is a copy.");

    private static string Place(string folder, string path) =>
        JobNames.IsPath(path) ? Path.Combine([folder, .. path.Split('/')]) : throw new JobStoreException($"'{path}' is no path of a file of a job.");

    /// <summary>Writes a file that is whole under its name, or not there.</summary>
    private static void WriteNew(string path, ReadOnlySpan<byte> content)
    {
        FolderFlush.Make(Path.GetDirectoryName(path)!);
        var temporary = $"{path}.{Guid.NewGuid():N}.new";
        try
        {
            using (FileStream file = new(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0))
            {
                file.Write(content);
                file.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: false);
            FolderFlush.Flush(Path.GetDirectoryName(path)!);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }

    private string MoveTo(string hidden, string wanted, ILookup<string, FoundJob> taken)
    {
        for (var number = 1; ; number++)
        {
            var name = number == 1 ? wanted : $"{wanted}-{number}";
            var folder = Path.Combine(root, name);
            if (taken.Contains(name) || Directory.Exists(folder))
            {
                continue;
            }

            try
            {
                Directory.Move(hidden, folder);
                return name;
            }
            catch (IOException) when (Directory.Exists(folder))
            {
                // Somebody opened a job of that name at the same moment.
            }
        }
    }

    private static void TryDelete(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // The failure that led here is the one to tell of; no job has such a name.
        }
    }

    private static T Guarded<T>(string path, Func<T> action)
    {
        try
        {
            return action();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new JobStoreException($"'{path}': {failure.Message}", failure);
        }
    }
}
