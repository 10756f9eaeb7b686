using ProcScript.Cli.Sources;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Versions;

/// <summary>A state of a library that is compared with another: files as they lie on the disk, or as they were at a revision.</summary>
/// <param name="Store">Its files.</param>
/// <param name="IsGiven">Whether the user asked about a file, or it is only used by one that he asked about.</param>
/// <param name="Selection">Where it lies, to name its files by.</param>
internal sealed record LibraryState(ISourceStore Store, Predicate<string> IsGiven, SourceSelection Selection)
{
    /// <summary>Finds the states that two arguments name.</summary>
    /// <param name="old">A file, a folder, <c>REVISION</c> or <c>REVISION:PATH</c>.</param>
    /// <param name="fresh">Another.</param>
    /// <param name="root">The library's root folder as typed, or null to find it.</param>
    /// <param name="around">The run.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="UsageException">One of them names nothing.</exception>
    public static async Task<(LibraryState Old, LibraryState New)> FindAsync(string old, string fresh, string? root, Surroundings around, CancellationToken stop)
    {
        var (first, second) = (Typed.Read(old, around.CurrentFolder), Typed.Read(fresh, around.CurrentFolder));
        // A revision alone means what the other argument names, as it was then.
        return (
            await FindAsync(first.WithPath(second.Path ?? "."), root, around, stop),
            await FindAsync(second.WithPath(first.Path ?? "."), root, around, stop));
    }

    private static Task<LibraryState> FindAsync(Typed typed, string? root, Surroundings around, CancellationToken stop) =>
        typed.Revision is null ? Task.FromResult(OnDisk(typed.Path!, root, around)) : AtRevisionAsync(typed, root, around, stop);

    private static LibraryState OnDisk(string path, string? root, Surroundings around)
    {
        var selection = SourceSelection.Find(new InputRequest([path], root), around.CurrentFolder);
        return new LibraryState(new DiskSourceStore(selection, around.OpenInput), selection.IsGiven, selection);
    }

    private static async Task<LibraryState> AtRevisionAsync(Typed typed, string? root, Surroundings around, CancellationToken stop)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(typed.Path!, around.CurrentFolder));
        // What was there then may be gone now: the folder that is still there leads to the repository.
        var folder = full;
        while (!Directory.Exists(folder))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        var top = root is null ? LibraryFolder.Find([folder], around.CurrentFolder) : Path.TrimEndingDirectorySeparator(Path.GetFullPath(root, around.CurrentFolder));
        if (!LibraryFolder.Holds(top, full))
        {
            throw new UsageException($"'{typed.Path}' is not inside the library root '{top}'.");
        }

        var git = await GitLibrary.OpenAsync(top, stop);
        var files = await git.SourcesAtAsync(await git.CommitAsync(typed.Revision!, stop), stop);
        var asked = Path.GetRelativePath(top, full).Replace(Path.DirectorySeparatorChar, '/');
        Predicate<string> isGiven = path => asked == "." || path == asked || path.StartsWith(asked + "/", StringComparison.Ordinal);
        GitSources store = new(files, isGiven);
        if (store.Paths.Count == 0)
        {
            throw new UsageException($"there was no .proc file at '{typed.Path}' in revision '{typed.Revision}'.");
        }

        return new LibraryState(store, isGiven, new SourceSelection(top, [.. store.Paths], StandardInput: null));
    }

    /// <summary>An argument, taken apart.</summary>
    private sealed record Typed(string? Revision, string? Path)
    {
        /// <summary>What is there on the disk is meant; anything else is a revision, up to the first colon.</summary>
        public static Typed Read(string typed, string currentFolder)
        {
            if (typed.Length == 0 || typed.Contains('\0'))
            {
                throw new UsageException("an empty argument names no file, folder or revision.");
            }

            if (System.IO.Path.Exists(System.IO.Path.GetFullPath(typed, currentFolder)))
            {
                return new Typed(null, typed);
            }

            var colon = typed.IndexOf(':', StringComparison.Ordinal);
            return colon < 0 ? new Typed(typed, null)
                : new Typed(typed[..colon], colon + 1 == typed.Length ? "." : typed[(colon + 1)..]);
        }

        public Typed WithPath(string path) => Path is null ? this with { Path = path } : this;
    }
}
