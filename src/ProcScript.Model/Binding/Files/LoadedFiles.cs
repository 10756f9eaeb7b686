using System.Collections.Immutable;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Binding.Files;

/// <summary>The files that a binding has come across, for the next one to look whether they are all there is to read.</summary>
/// <param name="Files">The files, all of them read.</param>
/// <param name="Listed">The paths that the store listed, in its order.</param>
/// <param name="Missing">The paths that some file uses and that led to no file.</param>
internal sealed record LoadedFiles(SourceFiles Files, ImmutableArray<string> Listed, ImmutableArray<string> Missing)
{
    /// <summary>Reads the same files again. False where there are others to read, or one cannot be read; then nothing is sure.</summary>
    public bool Reload(ISourceStore store, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var paths = store.Paths;
        if (paths.Count != Listed.Length || !paths.SequenceEqual(Listed) || Missing.Any(path => store.Read(path).Outcome != SourceOutcome.Missing))
        {
            return false;
        }

        foreach (var file in Files.All)
        {
            if (store.Read(file.Path).Content is not { } content)
            {
                return false;
            }

            file.Set(SourceFiles.Parse(store, file.Path, content, cancellation), isRead: true);
            if (file.IsChanged && !(file.SettledTree?.Root.Uses.SequenceEqual(file.Tree.Root.Uses) ?? false))
            {
                return false;
            }
        }

        return true;
    }
}
