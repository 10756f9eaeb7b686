using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Jobs.Files;

/// <summary>Job records in folders: one folder a job, below one folder. This is the truth wherever no database is named.</summary>
/// <param name="root">The folder, as a full path.</param>
public sealed class FileJobStore(string root) : IJobStore
{
    private const string Opening = ".opening-";

    private readonly ConcurrentDictionary<string, JournalFile> _journals = new(StringComparer.Ordinal);

    /// <summary>The folder of a job, as a full path.</summary>
    /// <param name="job">The job.</param>
    /// <exception cref="JobStoreException">That is no name of a job.</exception>
    public string FolderOf(string job) => JobNames.IsName(job)
        ? Path.Combine(root, job)
        : throw new JobStoreException($"'{job}' is no name of a job: letters, digits, '_', '-' and '.' are.");

    /// <inheritdoc/>
    public Task<ImmutableArray<string>> ListAsync(CancellationToken stop) => Task.FromResult(Guarded<ImmutableArray<string>>(root, () => Directory.Exists(root)
        ?
        [
            .. Directory.EnumerateDirectories(root).Select(folder => Path.GetFileName(folder)!)
                .Where(name => JobNames.IsName(name) && File.Exists(Path.Combine(root, name, JournalFile.Name))).Order(StringComparer.Ordinal),
        ]
        : []));

    /// <inheritdoc/>
    public Task<ImmutableDictionary<string, long>> ExtentsAsync(CancellationToken stop) => Task.FromResult(Guarded(root, () => Directory.Exists(root)
        ? new DirectoryInfo(root).EnumerateDirectories().Where(folder => JobNames.IsName(folder.Name))
            .Select(folder => new FileInfo(Path.Combine(folder.FullName, JournalFile.Name))).Where(journal => journal.Exists)
            .ToImmutableDictionary(journal => journal.Directory!.Name, journal => journal.Length, StringComparer.Ordinal)
        : ImmutableDictionary<string, long>.Empty));

    /// <inheritdoc/>
    public Task<long> ExtentAsync(string job, CancellationToken stop)
    {
        var path = Path.Combine(FolderOf(job), JournalFile.Name);
        return Task.FromResult(Guarded(path, () => new FileInfo(path).Length));
    }

    /// <inheritdoc/>
    public Task<string> CreateAsync(string wanted, IReadOnlyDictionary<string, byte[]> files, JobEvent opened, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(files);
        _ = FolderOf(wanted);
        return Task.FromResult(Guarded(Path.Combine(root, wanted), () =>
        {
            Directory.CreateDirectory(root);
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
                return MoveTo(hidden, wanted);
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
        return File.Exists(Path.Combine(folder, JournalFile.Name))
            ? _journals.GetOrAdd(job, _ => new JournalFile(folder))
            : throw new JobStoreException($"there is no job '{job}' in '{root}'.");
    }

    private static string Place(string folder, string path) =>
        JobNames.IsPath(path) ? Path.Combine([folder, .. path.Split('/')]) : throw new JobStoreException($"'{path}' is no path of a file of a job.");

    /// <summary>Writes a file that is whole under its name, or not there.</summary>
    private static void WriteNew(string path, ReadOnlySpan<byte> content)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var temporary = $"{path}.{Guid.NewGuid():N}.new";
        try
        {
            using (FileStream file = new(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0))
            {
                file.Write(content);
                file.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: false);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }

    private string MoveTo(string hidden, string wanted)
    {
        for (var number = 1; ; number++)
        {
            var name = number == 1 ? wanted : $"{wanted}-{number}";
            var folder = Path.Combine(root, name);
            if (Directory.Exists(folder))
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
