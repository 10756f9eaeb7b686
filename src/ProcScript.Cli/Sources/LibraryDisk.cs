using System.Collections.Concurrent;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Sources;

/// <summary>Reads the files of a library from the disk: none that a link brings in from outside, and no device or pipe, which might never end.</summary>
/// <param name="root">The library's root folder, as a full path.</param>
internal sealed class LibraryDisk(string root)
{
    private readonly ConcurrentDictionary<string, bool> _folders = new(StringComparer.Ordinal);

    /// <summary>A shell hands in what a command writes as a path in here; that is no library, and was named by the user himself.</summary>
    private readonly bool _isOfDevices = root == "/dev" || root.StartsWith("/dev/", StringComparison.Ordinal);

    /// <summary>What comes of reading the file at a path of the library.</summary>
    public SourceReading Read(string path)
    {
        if (path.Contains('\0'))
        {
            return new SourceReading(null, SourceOutcome.Missing);
        }

        var full = Path.Combine(root, path);
        return _isOfDevices ? SourceBytes.ReadFile(full) : Refusal(path, full) ?? SourceBytes.ReadFile(full);
    }

    private SourceReading? Refusal(string path, string full)
    {
        try
        {
            FileInfo file = new(full);
            var isLink = file.LinkTarget is not null;
            if (isLink ? RealPath.LeadsOut(root, full) : _folders.GetOrAdd(file.DirectoryName!, folder => Directory.Exists(folder) && RealPath.LeadsOut(root, folder)))
            {
                return new SourceReading(null, SourceOutcome.LeadsOut);
            }

            if (!file.Exists && (isLink || path.Contains('\uFFFD')))
            {
                return new SourceReading(
                    null, SourceOutcome.Unreadable, isLink ? "It is a link to what is not there." : "Its name is not UTF-8; give it another.");
            }

            return file.Exists && (isLink || file.Length == 0) && FileSort.IsSpecial(full) ? new SourceReading(null, SourceOutcome.Special) : null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return new SourceReading(null, SourceOutcome.Unreadable, failure.Message);
        }
    }
}
