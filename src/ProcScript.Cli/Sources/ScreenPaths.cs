namespace ProcScript.Cli.Sources;

/// <summary>How the files of the library are named to the user: relative to where he stands, with forward slashes.</summary>
/// <param name="selection">The library.</param>
/// <param name="currentFolder">Where the user stands.</param>
internal sealed class ScreenPaths(SourceSelection selection, string currentFolder)
{
    /// <summary>The name of a file of the library.</summary>
    public string Of(string path) =>
        path == selection.StandardInput
            ? SourceSelection.StandardInputName
            : Path.GetRelativePath(currentFolder, Path.Combine(selection.Root, path)).Replace(Path.DirectorySeparatorChar, '/');
}
