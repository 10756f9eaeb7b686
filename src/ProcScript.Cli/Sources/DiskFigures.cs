using System.Collections.Concurrent;
using ProcScript.Model.Figures;

namespace ProcScript.Cli.Sources;

/// <summary>The pictures of a library on the disk. None is opened before somebody looks into it, and none that a link brings in from outside.</summary>
/// <param name="root">The library's root folder, as a full path.</param>
internal sealed class DiskFigures(string root)
{
    private readonly ConcurrentDictionary<string, FigureFile> _files = new(StringComparer.Ordinal);

    /// <summary>Every picture that was looked for so far.</summary>
    public IReadOnlyDictionary<string, FigureFile> Found => _files;

    /// <summary>The picture at a path of the library.</summary>
    public FigureFile Find(string path) => _files.GetOrAdd(path, one => FindAnew(root, one));

    /// <summary>The picture at a path below a folder.</summary>
    public static FigureFile FindAnew(string root, string path)
    {
        if (path.Contains('\0'))
        {
            return FigureFile.Missing;
        }

        var full = Path.Combine(root, path);
        try
        {
            FileInfo file = new(full);
            if (!file.Exists)
            {
                return Directory.Exists(full) ? FigureFile.Refused(FigureTrouble.Unreadable, "It is a folder.") : FigureFile.Missing;
            }

            if (RealPath.LeadsOut(root, full))
            {
                return FigureFile.Refused(FigureTrouble.LeadsOut);
            }

            var length = (file.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? file).Length;
            return new FigureFile(FigureTrouble.None, length, () => Fetch(full));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return FigureFile.Refused(FigureTrouble.Unreadable, failure.Message);
        }
    }

    private static byte[]? Fetch(string path)
    {
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
            if (!file.CanSeek || file.Length > FigureLimits.MostBytes)
            {
                return null;
            }

            var bytes = new byte[file.Length];
            file.ReadExactly(bytes);
            return bytes;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return null;
        }
    }
}
