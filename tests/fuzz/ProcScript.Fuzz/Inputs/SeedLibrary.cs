using System.Collections.Immutable;

namespace ProcScript.Fuzz.Inputs;

/// <summary>A library that inputs are made from.</summary>
/// <param name="Name">Where it comes from.</param>
/// <param name="Files">Its texts by path, settings among them.</param>
internal sealed record SeedLibrary(string Name, ImmutableSortedDictionary<string, string> Files)
{
    /// <summary>The paths of its sources.</summary>
    public ImmutableArray<string> Sources { get; } = [.. Files.Keys.Where(path => path.EndsWith(".proc", StringComparison.Ordinal))];

    /// <summary>The library with another text for one file.</summary>
    public SeedLibrary With(string path, string text) => this with { Files = Files.SetItem(path, text) };
}
