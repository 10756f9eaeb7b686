using System.Collections.Immutable;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Binding.Files;

/// <summary>The files that a binding has come across, for the next one to look whether they are all there is to read.</summary>
/// <param name="store">Where they were read.</param>
/// <param name="files">The files, all of them read.</param>
/// <param name="listed">The paths that the store listed, in its order.</param>
/// <param name="missing">The paths that some file uses and that led to no file.</param>
internal sealed class LoadedFiles(ISourceStore store, SourceFiles files, ImmutableArray<string> listed, ImmutableArray<string> missing)
{
    private ISourceStore _last = store;

    /// <summary>The files.</summary>
    public SourceFiles Files => files;

    /// <summary>
    /// Reads the same files again, of a store that tells what may have changed only those. False where there are others to read, or one
    /// cannot be read; then nothing is sure.
    /// </summary>
    /// <param name="now">Where to read.</param>
    /// <param name="changed">Takes the files with another text than that of the last binding.</param>
    /// <param name="cancellation">Gives up.</param>
    public bool Reload(ISourceStore now, HashSet<SourceFile> changed, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var changes = now is IParsedSourceStore parsed ? parsed.ChangesSince(_last) : null;
        if (changes is null && (now.Paths.Count != listed.Length || !now.Paths.SequenceEqual(listed)))
        {
            return false;
        }

        if ((changes is null ? missing : missing.Where(changes.Contains)).Any(path => now.Read(path).Outcome != SourceOutcome.Missing))
        {
            return false;
        }

        foreach (var file in changes is null ? files.All : changes.Select(files.Find).OfType<SourceFile>())
        {
            if (now.Read(file.Path).Content is not { } content)
            {
                return false;
            }

            file.Set(SourceFiles.Parse(now, file.Path, content, cancellation), isRead: true);
            if (!file.IsChanged)
            {
                changed.Remove(file);
                continue;
            }

            changed.Add(file);
            if (!(file.SettledTree?.Root.Uses.SequenceEqual(file.Tree.Root.Uses) ?? false))
            {
                return false;
            }
        }

        _last = now;
        return true;
    }
}
