using System.Collections.Immutable;

namespace ProcScript.Cli.Caching;

/// <summary>What is asked of the cache.</summary>
/// <param name="Folder">Where it is to lie, as typed; null for the user's own cache.</param>
/// <param name="IsOff">Whether nothing is to be remembered or recalled.</param>
/// <param name="Arguments">All arguments of the run, for an answer is good only for the same ones.</param>
internal sealed record CacheRequest(string? Folder, bool IsOff, ImmutableArray<string> Arguments)
{
    /// <summary>The folder as a full path; null where nothing is to be remembered or the user has no cache.</summary>
    public string? FolderFor(Surroundings around)
    {
        if (IsOff)
        {
            return null;
        }

        if (Folder is { } typed)
        {
            return typed.Length == 0 || typed.Contains('\0')
                ? throw new UsageException("an empty path names no folder for the cache.")
                : Path.GetFullPath(typed, around.CurrentFolder);
        }

        return (around.Variable("XDG_CACHE_HOME"), around.Variable("LOCALAPPDATA"), around.Variable("HOME")) switch
        {
            ({ Length: > 0 } cache, _, _) when Path.IsPathFullyQualified(cache) => Path.Combine(cache, "procscript"),
            (_, { Length: > 0 } local, _) when Path.IsPathFullyQualified(local) => Path.Combine(local, "procscript", "cache"),
            (_, _, { Length: > 0 } home) when Path.IsPathFullyQualified(home) => Path.Combine(home, ".cache", "procscript"),
            _ => null,
        };
    }
}
