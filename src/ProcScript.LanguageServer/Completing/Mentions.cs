using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Names;

namespace ProcScript.LanguageServer.Completing;

/// <summary>Where the document last speaks of each name before a place: what one has just written of, one often goes on with.</summary>
internal sealed class Mentions
{
    private readonly Dictionary<string, (int Last, int Count)> _seen = new(StringComparer.Ordinal);

    /// <summary>Reads the names of a document.</summary>
    public Mentions(Asked asked, int offset)
    {
        foreach (var use in asked.Analysis.Names.In(asked.Path)?.All ?? [])
        {
            if (use.Span.End < offset)
            {
                _seen[use.Name] = (use.Span.Start, _seen.GetValueOrDefault(use.Name).Count + 1);
            }
        }
    }

    /// <summary>Those mentioned last come first, then the others as they are.</summary>
    public IEnumerable<T> LatestFirst<T>(IEnumerable<T> things, Func<T, string> name) =>
        things.OrderByDescending(one => _seen.TryGetValue(CanonicalName.Base(name(one)), out var seen) ? seen.Last : -1);

    /// <summary>Those mentioned last and those mentioned most often take turns, then come the others as they are.</summary>
    public IEnumerable<T> MostLikelyFirst<T>(IEnumerable<T> things, Func<T, string> name)
    {
        var all = things.ToList();
        var often = all.OrderByDescending(one => _seen.GetValueOrDefault(CanonicalName.Base(name(one))).Count);
        return LatestFirst(all, name).Zip(often, (latest, most) => new[] { latest, most }).SelectMany(pair => pair).DistinctBy(name);
    }
}
