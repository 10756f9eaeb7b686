using ProcScript.Analysis;
using ProcScript.Analysis.Reaching;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>Writes a procedure that was found as a file of the library, never over another.</summary>
internal static class WrittenProcedure
{
    /// <summary>Proves the file as it will stand, and writes it.</summary>
    /// <exception cref="UsageException">It cannot be written there.</exception>
    /// <exception cref="ReachRefusedException">It would not be proven there.</exception>
    public static async Task WriteAsync(
        string typed, string procedure, IEnumerable<string> uses, DiskSourceStore store, CheckSettings settings, Surroundings around, CancellationToken stop)
    {
        var path = Path.GetFullPath(typed, around.CurrentFolder);
        if (Path.Exists(path))
        {
            throw new UsageException($"'{typed}' is there already, and nothing was written; name another file after --write.");
        }

        if (!path.EndsWith(".proc", StringComparison.Ordinal))
        {
            throw new UsageException($"'{typed}' is no source: its name has to end in .proc. Nothing was written.");
        }

        if (!LibraryFolder.Holds(store.Selection.Root, path))
        {
            throw new UsageException($"'{typed}' is not inside the library root '{store.Selection.Root}', where it could not use the machine. Nothing was written.");
        }

        var inLibrary = RelativePath.Inside(store.Selection.Root, path);
        var text = await Task.Run(() => DraftedProcedure.File(store, settings, inLibrary, procedure, uses), stop).WaitAsync(stop);
        stop.ThrowIfCancellationRequested();
        using PendingFiles files = new();
        files.Add(path, text);
        files.Commit(replace: false);
        around.Error.WriteLine(LogCommands.DisarmLines($"wrote {typed}: proven; read it against the machine."));
    }
}
