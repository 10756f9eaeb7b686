using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>Who there is to do a job.</summary>
/// <param name="People">How many people, at least one.</param>
/// <param name="Certified">How many of them, the first, hold every certificate of which nothing else is said; everybody where it is more than there are.</param>
public sealed record CrewSize(int People, int Certified = int.MaxValue)
{
    /// <summary>Who holds a certificate, by its name; people are counted from 0.</summary>
    public ImmutableDictionary<string, ImmutableArray<int>> Named { get; init; } = ImmutableDictionary<string, ImmutableArray<int>>.Empty;

    /// <summary>The people who hold a certificate.</summary>
    /// <param name="certificate">Its name; empty for what the law asks for and nothing here names.</param>
    public ImmutableArray<int> HoldersOf(string certificate) => Named.TryGetValue(certificate, out var holders)
        ? [.. holders.Where(person => person < People)]
        : [.. Enumerable.Range(0, Math.Min(Certified, People))];
}
