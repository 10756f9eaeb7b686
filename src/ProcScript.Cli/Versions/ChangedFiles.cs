using System.Collections.Frozen;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Versions;

/// <summary>The files of a library that have changed since a revision.</summary>
internal static class ChangedFiles
{
    /// <summary>Their paths in the library; null where all may have changed.</summary>
    /// <exception cref="UsageException">Git cannot tell.</exception>
    public static async Task<FrozenSet<string>?> SinceAsync(string revision, SourceSelection selection, CancellationToken stop)
    {
        if (selection.StandardInput is not null)
        {
            throw new UsageException("the standard input has no revisions: --since is for files and folders.");
        }

        var git = await GitLibrary.OpenAsync(selection.Root, stop);
        return await git.ChangedSinceAsync(await git.CommitAsync(revision, stop), stop);
    }
}
