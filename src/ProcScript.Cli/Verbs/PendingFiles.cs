using System.Text;
using ProcScript.Analysis.Mending;
using ProcScript.Cli.Sources;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>
/// Files that appear together or not at all as far as a file system allows: each is written beside its place under another name,
/// and they are renamed only when all are on the disk. Devices and pipes, which have no other name, are written to last. What was not committed is removed; what a run that was killed could not remove is
/// removed by the next one that writes there.
/// </summary>
internal sealed class PendingFiles : IDisposable
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly List<(string Temporary, string Final)> _files = [];
    private readonly List<(string Path, byte[] Content)> _written = [];
    private readonly List<(string Path, string Name, string Before)> _replaced = [];
    private readonly HashSet<string> _folders = new(StringComparer.Ordinal);

    /// <summary>Writes texts of a library in place of those that they were made from, all or none.</summary>
    /// <param name="selection">The library.</param>
    /// <param name="files">The texts.</param>
    /// <exception cref="UsageException">One cannot be written, or is not as it was.</exception>
    public static void Rewrite(SourceSelection selection, IEnumerable<MendedFile> files)
    {
        using PendingFiles pending = new();
        foreach (var file in files)
        {
            pending.Replace(Path.Combine(selection.Root, file.Path), file.Path, file.Before, file.After);
        }

        pending.Commit(replace: true);
    }

    /// <summary>Writes a file, not yet under its name.</summary>
    /// <exception cref="UsageException">It cannot be written.</exception>
    public void Add(string path, string text) => Add(path, Utf8.GetBytes(text));

    /// <summary>Writes a file of bytes, not yet under its name.</summary>
    /// <exception cref="UsageException">It cannot be written.</exception>
    public void Add(string path, ReadOnlySpan<byte> bytes)
    {
        var content = bytes.ToArray();
        Do(path, () => Write(path, content));
    }

    private void Write(string path, byte[] bytes)
    {
        // A device or a pipe takes what is written; whoever gave its name to a file would have destroyed it.
        if (FileSort.IsSpecial(path))
        {
            _written.Add((path, bytes));
            return;
        }

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
        File.WriteAllBytes(temporary, bytes);
        if (!OperatingSystem.IsWindows() && File.Exists(final))
        {
            File.SetUnixFileMode(temporary, File.GetUnixFileMode(final));
        }
    }

    /// <summary>Writes a file, not yet under its name, that takes the place of what it was made from.</summary>
    /// <param name="path">The file.</param>
    /// <param name="name">What the user calls it.</param>
    /// <param name="before">The text that the new one was made from.</param>
    /// <param name="after">The new text.</param>
    /// <exception cref="UsageException">It cannot be written.</exception>
    public void Replace(string path, string name, string before, string after)
    {
        Add(path, SourceBytes.MarkOf(path) + after);
        _replaced.Add((path, name, before));
    }

    /// <summary>Gives the files their names.</summary>
    /// <param name="replace">Whether files that are there already may go.</param>
    /// <exception cref="UsageException">It cannot be done, or a file is no longer what its new text was made from; nothing has changed then.</exception>
    public void Commit(bool replace)
    {
        foreach (var (path, name, before) in _replaced)
        {
            // An editor, or another run, may have saved meanwhile: its text is newer than the one that was worked on.
            if (SourceBytes.ReadFile(path) is not { Outcome: SourceOutcome.Read } now || now.Content != before)
            {
                throw new UsageException($"'{name}' was changed by somebody else meanwhile: nothing was written. Run it again.");
            }
        }

        foreach (var (temporary, path) in _files)
        {
            Do(path, () => File.Move(temporary, path, replace));
        }

        _files.Clear();
        foreach (var (path, content) in _written)
        {
            Do(path, () => WriteTo(path, content));
        }
    }

    private static void WriteTo(string path, byte[] content)
    {
        using FileStream target = new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        target.Write(content);
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
