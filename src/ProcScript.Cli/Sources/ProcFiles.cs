namespace ProcScript.Cli.Sources;

/// <summary>The <c>.proc</c> files below a folder.</summary>
internal static class ProcFiles
{
    private const string Extension = ".proc";

    /// <summary>Whether a file of that name is a source.</summary>
    public static bool IsSource(string name) => name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase);

    /// <summary>
    /// Full paths, in no promised order. Folders whose name starts with a dot are left out, and so are linked folders: a link
    /// may lead back to where it stands.
    /// </summary>
    public static IEnumerable<string> In(string folder)
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
                else if (IsSource(entry.Name))
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
