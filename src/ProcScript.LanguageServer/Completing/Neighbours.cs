using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The files that whoever writes a document has most likely seen: what it uses, and what lies beside it.</summary>
internal static class Neighbours
{
    private const int Most = 64;

    /// <summary>Their paths, itself among them.</summary>
    public static IEnumerable<string> Of(Asked asked)
    {
        var folder = asked.Path[..(asked.Path.LastIndexOf('/') + 1)];
        var beside = asked.Analysis.Library.Trees.Keys
            .Where(path => path.StartsWith(folder, StringComparison.Ordinal) && !path[folder.Length..].Contains('/', StringComparison.Ordinal));
        return asked.Analysis.Names.Reach(asked.Path).Concat(beside).Distinct(StringComparer.Ordinal).Take(Most);
    }
}
