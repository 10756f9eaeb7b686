using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Reports;

/// <summary>
/// How the files of the library are named to services that show findings beside the sources: relative to the root of the repository,
/// with forward slashes.
/// </summary>
/// <param name="prefix">The way from the repository's root to the library's, with a slash at its end; empty where they are the same.</param>
internal sealed class RepositoryPaths(string prefix)
{
    /// <summary>The names for a library: its repository is the nearest folder above with a <c>.git</c>, without one the library itself.</summary>
    public static RepositoryPaths For(string libraryRoot)
    {
        for (var folder = libraryRoot; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (Path.Exists(Path.Combine(folder, ".git")))
            {
                var way = RelativePath.Inside(folder, libraryRoot);
                return new RepositoryPaths(way == "." ? "" : way + "/");
            }
        }

        return new RepositoryPaths("");
    }

    /// <summary>The name of a file that is named relative to the library's root. One outside of the repository keeps its full path.</summary>
    public string Of(string path)
    {
        if (Path.IsPathRooted(path) || !path.StartsWith("../", StringComparison.Ordinal))
        {
            return Path.IsPathRooted(path) ? path : prefix + path;
        }

        var left = prefix;
        while (path.StartsWith("../", StringComparison.Ordinal) && left.Length > 0)
        {
            path = path[3..];
            left = left[..(left.LastIndexOf('/', left.Length - 2) + 1)];
        }

        return left + path;
    }
}
