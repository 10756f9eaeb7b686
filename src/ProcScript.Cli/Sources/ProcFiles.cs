using ProcScript.Analysis.Expecting;

namespace ProcScript.Cli.Sources;

/// <summary>The files of a library below a folder: sources, and what it expects of itself.</summary>
internal static class ProcFiles
{
    private const string Extension = ".proc";

    /// <summary>Whether a file of that name is a source.</summary>
    public static bool IsSource(string name) => name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a file of that name says what a library expects of itself.</summary>
    public static bool IsExpectation(string name) => name.EndsWith(ExpectFile.Extension, StringComparison.OrdinalIgnoreCase);

    /// <summary>The sources below a folder.</summary>
    public static IEnumerable<string> In(string folder) => In(folder, IsSource);

    /// <summary>
    /// Full paths, in no promised order. Folders whose name starts with a dot are left out, and so are linked folders: a link
    /// may lead back to where it stands.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="isWanted">Which files are wanted, by their names.</param>
    public static IEnumerable<string> In(string folder, Predicate<string> isWanted)
    {
        var open = new Stack<DirectoryInfo>([new DirectoryInfo(folder)]);
        while (open.TryPop(out var current))
        {
            foreach (var entry in Entries(current))
            {
                if (entry is DirectoryInfo child)
                {
                    if (child.Name[0] != '.' && child.LinkTarget is null)
                    {
                        open.Push(child);
                    }
                }
                else if (isWanted(entry.Name))
                {
                    yield return entry.FullName;
                }
            }
        }
    }

    private static FileSystemInfo[] Entries(DirectoryInfo folder)
    {
        try
        {
            return folder.GetFileSystemInfos();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"cannot list the folder '{folder.FullName}': {failure.Message}");
        }
    }
}
