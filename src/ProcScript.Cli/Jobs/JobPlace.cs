using ProcScript.Jobs.Files;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary>Where a job that somebody named is kept.</summary>
/// <param name="Store">The store.</param>
/// <param name="Name">The job's name in it.</param>
/// <param name="Folder">Its folder, as a full path.</param>
internal sealed record JobPlace(FileJobStore Store, string Name, string Folder)
{
    /// <summary>Finds a job.</summary>
    /// <param name="typed">Its folder.</param>
    /// <param name="currentFolder">Where relative paths start from.</param>
    /// <exception cref="UsageException">There is none.</exception>
    public static JobPlace Find(string typed, string currentFolder)
    {
        if (typed.Length == 0 || typed.Contains('\0'))
        {
            throw new UsageException("an empty path names no job.");
        }

        var folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(typed, currentFolder));
        var (root, name) = (Path.GetDirectoryName(folder), Path.GetFileName(folder));
        return root is not null && JobNames.IsName(name) && File.Exists(Path.Combine(folder, JournalFile.Name))
            ? new JobPlace(new FileJobStore(root), name, folder)
            : throw new UsageException($"'{typed}' is no job: a folder with a {JournalFile.Name} is. 'procscript job list' shows those there are.");
    }
}
