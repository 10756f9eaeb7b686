namespace ProcScript.Cli.Sources;

/// <summary>Paths inside a folder, as the library writes them.</summary>
internal static class RelativePath
{
    /// <summary>The way from a folder to a file, with forward slashes.</summary>
    public static string Inside(string folder, string path) => Inside(folder, path, Path.DirectorySeparatorChar);

    /// <summary>The same for a system with another separator.</summary>
    internal static string Inside(string folder, string path, char separator) => Path.GetRelativePath(folder, path).Replace(separator, '/');
}
