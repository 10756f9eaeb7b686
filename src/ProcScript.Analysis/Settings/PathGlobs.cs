using System.Collections.Immutable;
using Microsoft.Extensions.FileSystemGlobbing;

namespace ProcScript.Analysis.Settings;

/// <summary>The paths that an override is for.</summary>
internal sealed class PathGlobs
{
    /// <summary>Matching asks for a folder to count from; it is never looked at.</summary>
    private const string AnyRoot = "/library";

    private readonly Matcher _matcher = new(StringComparison.Ordinal);

    private PathGlobs(IEnumerable<string> globs) => _matcher.AddIncludePatterns(globs);

    /// <summary>Makes them of patterns that are globs each.</summary>
    public static PathGlobs Of(IEnumerable<string> globs) => new(globs);

    /// <summary>Why a pattern is no glob; null where it is one.</summary>
    public static string? Problem(string glob)
    {
        if (glob.Length == 0)
        {
            return "it is empty";
        }

        if (glob.StartsWith('/') || glob.Split('/', '\\').Contains(".."))
        {
            return "it leads out of the library: globs count from its root";
        }

        try
        {
            _ = new PathGlobs([glob]);
            return null;
        }
        catch (ArgumentException)
        {
            return "`*` stands for any letters of a name, `**` for any folders between slashes";
        }
    }

    /// <summary>Whether a path from the library's root is among them.</summary>
    public bool Match(string path) => _matcher.Match(AnyRoot, ImmutableArray.Create(path)).HasMatches;
}
