namespace ProcScript.Cli.Sources;

/// <summary>Where paths lead when the links on them are followed.</summary>
internal static class RealPath
{
    /// <summary>Whether the file, or a folder on the way to it, is a link to somewhere outside of a folder.</summary>
    /// <exception cref="IOException">The links go round in a circle.</exception>
    public static bool LeadsOut(string folder, string path) => !LibraryFolder.Holds(Of(folder), Of(path));

    /// <summary>The full path with all links on it followed.</summary>
    /// <exception cref="IOException">The links go round in a circle.</exception>
    public static string Of(string path)
    {
        var top = Path.GetPathRoot(path)!;
        var real = top;
        foreach (var name in Path.GetRelativePath(top, path).Split(Path.DirectorySeparatorChar))
        {
            real = Path.Combine(real, name);
            if (new DirectoryInfo(real) is { LinkTarget: not null } link && link.ResolveLinkTarget(returnFinalTarget: true) is { } target)
            {
                real = Of(Path.GetFullPath(target.FullName));
            }
        }

        return Path.TrimEndingDirectorySeparator(real);
    }
}
