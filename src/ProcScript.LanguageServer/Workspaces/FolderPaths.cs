namespace ProcScript.LanguageServer.Workspaces;

/// <summary>Full paths and the folders that hold them.</summary>
internal static class FolderPaths
{
    /// <summary>Whether a folder holds a file or folder, at whatever depth.</summary>
    public static bool Holds(string folder, string path) =>
        path.StartsWith(folder, StringComparison.Ordinal)
        && (path.Length == folder.Length || folder.EndsWith(Path.DirectorySeparatorChar) || path[folder.Length] == Path.DirectorySeparatorChar);

    /// <summary>The path from a folder to a file inside it, with forward slashes.</summary>
    public static string Inside(string folder, string path) =>
        Path.GetRelativePath(folder, path).Replace(Path.DirectorySeparatorChar, '/');
}
