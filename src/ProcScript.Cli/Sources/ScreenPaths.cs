using ProcScript.Cli.Output;

namespace ProcScript.Cli.Sources;

/// <summary>How the files of the library are named to the user: relative to where he stands, with forward slashes.</summary>
/// <param name="selection">The library.</param>
/// <param name="currentFolder">Where the user stands.</param>
internal sealed class ScreenPaths(SourceSelection selection, string currentFolder)
{
    /// <summary>The name of a file of the library, fit for a terminal.</summary>
    public string Of(string path) => PrintableText.Of(Exact(path));

    /// <summary>The same as it is, for a program to read.</summary>
    public string Exact(string path) =>
        path == selection.StandardInput
            ? SourceSelection.StandardInputName
            : Path.GetRelativePath(currentFolder, Path.Combine(selection.Root, path)).Replace(Path.DirectorySeparatorChar, '/');

    /// <summary>The mark that the file begins with, before its text.</summary>
    public string MarkOf(string path) => path == selection.StandardInput ? "" : SourceBytes.MarkOf(Path.Combine(selection.Root, path));
}
