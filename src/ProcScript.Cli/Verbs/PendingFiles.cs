using System.Text;

namespace ProcScript.Cli.Verbs;

/// <summary>
/// Files that appear together or not at all as far as a file system allows: each is written beside its place under another name,
/// and they are renamed only when all are on the disk. What was not committed is removed; what a run that was killed could not remove is
/// removed by the next one that writes there.
/// </summary>
internal sealed class PendingFiles : IDisposable
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly List<(string Temporary, string Final)> _files = [];
    private readonly HashSet<string> _folders = new(StringComparer.Ordinal);

    /// <summary>Writes a file, not yet under its name.</summary>
    /// <exception cref="UsageException">It cannot be written.</exception>
    public void Add(string path, string text) => Do(path, () =>
    {
        // What a link leads to is written, not the link.
        var final = new FileInfo(path).LinkTarget is null ? path : File.ResolveLinkTarget(path, returnFinalTarget: true)!.FullName;
        if (IsProtected(final))
        {
            throw new UsageException($"cannot write '{path}': it is write-protected.");
        }

        var folder = Path.GetDirectoryName(final)!;
        Directory.CreateDirectory(folder);
        if (_folders.Add(folder))
        {
            LeftoverFiles.Clean(folder);
        }

        var temporary = LeftoverFiles.NameFor(final);
        _files.Add((temporary, final));
        File.WriteAllText(temporary, text, Utf8);
        if (!OperatingSystem.IsWindows() && File.Exists(final))
        {
            File.SetUnixFileMode(temporary, File.GetUnixFileMode(final));
        }
    });

    /// <summary>Gives the files their names.</summary>
    /// <param name="replace">Whether files that are there already may go.</param>
    /// <exception cref="UsageException">It cannot be done.</exception>
    public void Commit(bool replace)
    {
        foreach (var (temporary, path) in _files)
        {
            Do(path, () => File.Move(temporary, path, replace));
        }

        _files.Clear();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var (temporary, _) in _files)
        {
            try
            {
                File.Delete(temporary);
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                // The failure that led here is the one to tell of.
            }
        }
    }

    /// <summary>A name can be given to another file whatever the file's own rights say; the user meant them all the same.</summary>
    private static bool IsProtected(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            return File.Exists(path) && File.GetAttributes(path).HasFlag(FileAttributes.ReadOnly);
        }

        const UnixFileMode anyWrite = UnixFileMode.UserWrite | UnixFileMode.GroupWrite | UnixFileMode.OtherWrite;
        return File.Exists(path) && (File.GetUnixFileMode(path) & anyWrite) == 0;
    }

    private static void Do(string path, Action action)
    {
        try
        {
            action();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new UsageException($"cannot write '{path}': {failure.Message}");
        }
    }
}
