using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Jobs.Files;

/// <summary>
/// A journal on a disk, or on a share. Whoever writes holds the lock file beside it, so that two programs never write at once. A line is
/// acknowledged once the disk has it; one that was cut off by a failure was not, and goes when the next is written.
/// </summary>
/// <param name="folder">The job's folder, as a full path.</param>
public sealed class JournalFile(string folder)
{
    /// <summary>The journal's name in the folder of its job.</summary>
    public const string Name = "journal.jsonl";

    private const string LockName = "journal.lock";

    /// <summary>How long somebody who writes waits for another.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly Dictionary<string, int> _byId = new(StringComparer.Ordinal);
    private readonly string _path = Path.Combine(folder, Name);
    private JournalLine? _last;
    private long _length;

    /// <summary>How a journal is.</summary>
    /// <param name="journal">The journal.</param>
    /// <exception cref="IOException">It is not there.</exception>
    internal static JournalStamp StampOf(FileInfo journal) => new(journal.Length, journal.LastWriteTimeUtc.Ticks);

    /// <summary>Reads it as far as it holds.</summary>
    /// <exception cref="JobStoreException">It cannot be read.</exception>
    public JournalReading Read()
    {
        try
        {
            using FileStream file = new(_path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
            return JournalText.Read(Rest(file));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new JobStoreException($"cannot read '{_path}': {failure.Message}", failure);
        }
    }

    /// <summary>Writes an event at the end.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="stop">Ends the waiting.</param>
    /// <exception cref="JobStoreException">It was not written.</exception>
    public async Task<AppendedLine> AppendAsync(JobEvent happened, CancellationToken stop)
    {
        await _gate.WaitAsync(stop);
        try
        {
            using var held = await LockAsync(stop);
            return Append(happened);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new JobStoreException($"nothing was written into '{_path}': {failure.Message}", failure);
        }
        finally
        {
            _gate.Release();
        }
    }

    private AppendedLine Append(JobEvent happened)
    {
        using FileStream file = new(_path, FileMode.Open, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
        CatchUp(file);
        if (_byId.TryGetValue(happened.Id, out var number))
        {
            // Who sends it again did not hear that it is safe: it is, once the disk has it.
            file.Flush(flushToDisk: true);
            return new AppendedLine(Again(file, number), WasThere: true);
        }

        var line = JournalText.Write(happened, _last);
        file.SetLength(_length);
        file.Position = _length;
        try
        {
            file.Write(line.Bytes.Span);
            file.Flush(flushToDisk: true);
        }
        catch (IOException)
        {
            TakeBack(file);
            throw;
        }

        Add(line);
        return new AppendedLine(line, WasThere: false) { Stamp = new JournalStamp(_length, File.GetLastWriteTimeUtc(file.SafeFileHandle).Ticks) };
    }

    /// <summary>Reads again a line that was read before: of most, only their identities are kept.</summary>
    private static JournalLine Again(FileStream file, int number)
    {
        file.Position = 0;
        var lines = JournalText.Read(Rest(file)).Lines;
        return lines.Length >= number ? lines[number - 1] : throw new IOException($"line {number} is not as it was. Look at a copy from before.");
    }

    /// <summary>Reads what others have written since.</summary>
    private void CatchUp(FileStream file)
    {
        if (file.Length < _length)
        {
            throw new IOException("it has become shorter: somebody has cut lines off. Look at a copy from before.");
        }

        file.Position = _length;
        var reading = JournalText.ReadOn(Rest(file), _last);
        if (reading.Fault is { } fault)
        {
            throw new IOException($"it is damaged in line {fault.Line}: {fault.Problem}. Nothing can be added to it; open a new job for what is left to do.");
        }

        foreach (var line in reading.Lines)
        {
            Add(line);
        }
    }

    private void Add(JournalLine line)
    {
        (_last, _length) = (line, _length + line.Bytes.Length);
        _byId[line.Event.Id] = line.Event.Number;
    }

    private void TakeBack(FileStream file)
    {
        try
        {
            file.SetLength(_length);
        }
        catch (IOException)
        {
            // A line without its end is no line: the next that is written takes its place.
        }
    }

    private static byte[] Rest(FileStream file)
    {
        var bytes = new byte[file.Length - file.Position];
        var read = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return read == bytes.Length ? bytes : bytes[..read];
    }

    private async Task<FileStream> LockAsync(CancellationToken stop)
    {
        var path = Path.Combine(folder, LockName);
        var until = TimeProvider.System.GetTimestamp() + (long)(Patience.TotalSeconds * TimeProvider.System.TimestampFrequency);
        for (var wait = 1; ; wait = Math.Min(2 * wait, 50))
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
            }
            catch (IOException failure) when (failure is not (DirectoryNotFoundException or FileNotFoundException) && IsHeld(failure) && TimeProvider.System.GetTimestamp() < until)
            {
                await Task.Delay(wait, stop);
            }
        }
    }

    /// <summary>Whether another holds the lock; a full disk is not worth waiting for.</summary>
    private static bool IsHeld(IOException failure) => (failure.HResult & 0xFFFF) is SharingViolation or LockViolation or WouldBlock;

    private const int SharingViolation = 32;
    private const int LockViolation = 33;
    private const int WouldBlock = 11;
}
