using System.Collections.Concurrent;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Sources;

/// <summary>The library as it lies on the disk, and the standard input where the user asked for it.</summary>
/// <param name="selection">The files that the user asked about.</param>
/// <param name="openInput">Opens the standard input.</param>
internal sealed class DiskSourceStore(SourceSelection selection, Func<Stream> openInput) : ISourceStore
{
    private readonly ConcurrentDictionary<string, SourceReading> _failures = new(StringComparer.Ordinal);
    private readonly Lazy<SourceReading> _standardInput = new(() =>
    {
        using var input = openInput();
        return SourceBytes.Read(input);
    });

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => selection.Paths;

    /// <summary>Whether a file that the user asked about could not be read.</summary>
    public bool HasUnreadableInput => _failures.Keys.Any(selection.IsGiven);

    /// <inheritdoc/>
    public SourceReading Read(string path)
    {
        var reading = path == selection.StandardInput ? _standardInput.Value : ReadFile(path);
        if (reading.Outcome is SourceOutcome.Missing or SourceOutcome.Unreadable)
        {
            _failures.TryAdd(path, reading);
        }

        return reading;
    }

    private SourceReading ReadFile(string path)
    {
        if (path.Contains('\0'))
        {
            return new SourceReading(null, SourceOutcome.Missing);
        }

        var full = Path.Combine(selection.Root, path);
        try
        {
            using var file = new FileStream(full, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
            return SourceBytes.Read(file);
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            return new SourceReading(null, SourceOutcome.Missing);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return new SourceReading(null, SourceOutcome.Unreadable, Directory.Exists(full) ? "It is a folder." : failure.Message);
        }
    }
}
