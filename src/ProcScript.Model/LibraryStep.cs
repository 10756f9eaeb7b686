using System.Collections.Immutable;

namespace ProcScript.Model;

/// <summary>
/// How a library came of the one that the binding before gave, where that is all there is to it: some files have another tree, and some
/// procedures are others, each in the place of an old one. Machines, kinds and tools are the same objects.
/// </summary>
public sealed class LibraryStep
{
    // Who keeps a library does not keep all that came before it.
    private readonly WeakReference<Library> _before;

    internal LibraryStep(Library before, ImmutableArray<string> files, ImmutableArray<int> procedures)
    {
        _before = new WeakReference<Library>(before);
        Files = files;
        Procedures = procedures;
    }

    /// <summary>The paths of the files with another tree.</summary>
    public ImmutableArray<string> Files { get; }

    /// <summary>The places of the procedures that are others.</summary>
    public ImmutableArray<int> Procedures { get; }

    /// <summary>Whether it leads from a library.</summary>
    public bool IsFrom(Library library) => _before.TryGetTarget(out var before) && ReferenceEquals(before, library);
}
