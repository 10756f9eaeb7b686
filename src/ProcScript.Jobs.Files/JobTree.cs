using ProcScript.Jobs.Stores;

namespace ProcScript.Jobs.Files;

/// <summary>The jobs of a folder: one lies in it, or in folders by which people sort them, such as one for each year and customer.</summary>
internal static class JobTree
{
    /// <summary>How many folders may lie between: whoever sorts by more has taken a wrong folder.</summary>
    private const int Deepest = 8;

    /// <summary>Folders that cannot be opened hold no job of ours, such as those that a file system keeps for itself.</summary>
    private static readonly EnumerationOptions All = new() { IgnoreInaccessible = true, AttributesToSkip = FileAttributes.None };

    /// <summary>Looks for them. Nothing is looked for in a job, behind a link or in what begins with a dot.</summary>
    /// <param name="root">The folder, as a full path.</param>
    /// <returns>The jobs by their names; a name has several folders where several jobs are called by it.</returns>
    public static ILookup<string, FoundJob> Find(string root)
    {
        List<FoundJob> found = [];
        if (Directory.Exists(root))
        {
            AddIn(new DirectoryInfo(root), 0, found);
        }

        return found.ToLookup(job => job.Name, StringComparer.Ordinal);
    }

    private static void AddIn(DirectoryInfo shelf, int depth, List<FoundJob> found)
    {
        foreach (var folder in shelf.EnumerateDirectories("*", All).Where(folder => !folder.Name.StartsWith('.')))
        {
            FileInfo journal = new(Path.Combine(folder.FullName, JournalFile.Name));
            if (journal.Exists)
            {
                if (JobNames.IsName(folder.Name))
                {
                    found.Add(new FoundJob(folder.Name, folder.FullName, JournalFile.StampOf(journal)));
                }

                continue;
            }

            try
            {
                if (depth < Deepest && !folder.Attributes.HasFlag(FileAttributes.ReparsePoint))
                {
                    AddIn(folder, depth + 1, found);
                }
            }
            catch (Exception failure) when (failure is DirectoryNotFoundException or FileNotFoundException)
            {
                // Somebody has just moved it: the next look finds it where it is then.
            }
        }
    }
}

/// <summary>A job that was found.</summary>
/// <param name="Name">Its name, which is that of its folder.</param>
/// <param name="Folder">Its folder, as a full path.</param>
/// <param name="Stamp">How its journal was.</param>
internal sealed record FoundJob(string Name, string Folder, JournalStamp Stamp);
