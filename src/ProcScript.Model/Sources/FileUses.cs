using ProcScript.Syntax;

namespace ProcScript.Model.Sources;

/// <summary>Which files the <c>use</c> lines of a file name, and how far that leads.</summary>
public static class FileUses
{
    /// <summary>The paths that a file uses, whether or not they are there; what leads out of the library is left out.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="tree">Its tree.</param>
    public static IEnumerable<string> Of(string path, SyntaxTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        return tree.Root.Uses.Select(use => LibraryPath.Resolve(path, use.Path.Value)).OfType<string>();
    }

    /// <summary>Files, and all that they lead to, however far.</summary>
    /// <param name="from">The files.</param>
    /// <param name="next">Where a file leads.</param>
    public static HashSet<string> Reach(IEnumerable<string> from, Func<string, IEnumerable<string>> next)
    {
        ArgumentNullException.ThrowIfNull(next);
        var reached = new HashSet<string>(from, StringComparer.Ordinal);
        var open = new Stack<string>(reached);
        while (open.TryPop(out var path))
        {
            foreach (var one in next(path).Where(reached.Add))
            {
                open.Push(one);
            }
        }

        return reached;
    }
}
