using System.Collections.Immutable;
using ProcScript.Analysis.Settings;

namespace ProcScript.Cli.Sources;

/// <summary>
/// Finds the root folder of the library: the nearest folder that holds all that was named and a <c>procscript.json</c> or a
/// <c>.git</c>; without one, the current folder if it holds all that was named; else the nearest folder that does.
/// </summary>
internal static class LibraryFolder
{
    private static readonly ImmutableArray<string> Marks = [SettingsKeys.FileName, ".git"];

    /// <summary>The root for files and folders that are given with their full paths.</summary>
    /// <param name="folders">The folders named, and the folders of the files named.</param>
    /// <param name="currentFolder">Where the user stands.</param>
    public static string Find(IReadOnlyCollection<string> folders, string currentFolder)
    {
        var common = folders.Aggregate(CommonFolder);
        for (var folder = common; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (Marks.Any(mark => IsThere(Path.Combine(folder, mark))))
            {
                return folder;
            }
        }

        return Holds(currentFolder, common) ? currentFolder : common;
    }

    /// <summary>Whether <paramref name="path"/> is <paramref name="folder"/> or lies in it.</summary>
    public static bool Holds(string folder, string path)
    {
        var relative = Path.GetRelativePath(folder, path);
        return !Path.IsPathRooted(relative) && relative != ".." && !relative.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal);
    }

    /// <summary>Whether something has that path; a link to what is not there was meant to be one all the same.</summary>
    public static bool IsThere(string path) => Path.Exists(path) || new FileInfo(path).LinkTarget is not null;

    private static string CommonFolder(string first, string second)
    {
        var folder = first;
        while (!Holds(folder, second))
        {
            folder = Path.GetDirectoryName(folder)
                ?? throw new UsageException($"'{first}' and '{second}' have no folder in common; check them one by one.");
        }

        return folder;
    }
}
