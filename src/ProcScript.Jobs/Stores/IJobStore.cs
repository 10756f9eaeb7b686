using System.Collections.Immutable;
using ProcScript.Jobs.Journals;

namespace ProcScript.Jobs.Stores;

/// <summary>
/// Where job records are kept: of each job a journal, which only grows, and files, which never change. Safe to use from several threads, and by
/// several programs at once.
/// </summary>
public interface IJobStore
{
    /// <summary>The names of all jobs, in ordinal order.</summary>
    /// <param name="stop">Ends the work.</param>
    Task<ImmutableArray<string>> ListAsync(CancellationToken stop);

    /// <summary>By what it shows that the journal of a job is not as it was, of each job. Quick, for it is asked every few seconds.</summary>
    /// <param name="stop">Ends the work.</param>
    Task<IReadOnlyDictionary<string, JournalStamp>> StampsAsync(CancellationToken stop);

    /// <summary>The same of one job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">There is no such job, or it cannot be read.</exception>
    Task<JournalStamp> StampAsync(string job, CancellationToken stop);

    /// <summary>Puts a job down: all of it is there afterwards, or nothing.</summary>
    /// <param name="wanted">The name that it is to have; where that is taken, a number goes behind it.</param>
    /// <param name="files">Its files by their paths.</param>
    /// <param name="opened">The first event.</param>
    /// <param name="stop">Ends the work.</param>
    /// <returns>The name.</returns>
    /// <exception cref="JobStoreException">It could not be put down.</exception>
    Task<string> CreateAsync(string wanted, IReadOnlyDictionary<string, byte[]> files, JobEvent opened, CancellationToken stop);

    /// <summary>Reads a journal as far as it holds.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">There is no such job, or it cannot be read.</exception>
    Task<JournalReading> ReadAsync(string job, CancellationToken stop);

    /// <summary>
    /// Writes an event at the end of a journal. Once it returns, the event survives whatever happens to the program and the machine under it. An event
    /// whose identity stands in the journal already is not written again.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="happened">The event.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">It was not written; the journal is as it was.</exception>
    Task<AppendedLine> AppendAsync(string job, JobEvent happened, CancellationToken stop);

    /// <summary>The files of a job whose paths begin with a folder, in ordinal order.</summary>
    /// <param name="job">The job.</param>
    /// <param name="folder">The folder, such as <c>library</c>.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">There is no such job, or it cannot be read.</exception>
    Task<ImmutableArray<string>> ListFilesAsync(string job, string folder, CancellationToken stop);

    /// <summary>Reads a file of a job; null where there is none.</summary>
    /// <param name="job">The job.</param>
    /// <param name="path">Its path.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">There is no such job, or it cannot be read.</exception>
    Task<byte[]?> ReadFileAsync(string job, string path, CancellationToken stop);

    /// <summary>Adds files to a job. One that is there already has to have the same content.</summary>
    /// <param name="job">The job.</param>
    /// <param name="files">The files by their paths.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">They could not be added, or another file has such a path.</exception>
    Task AddFilesAsync(string job, IReadOnlyDictionary<string, byte[]> files, CancellationToken stop);
}

/// <summary>An event that is safe.</summary>
/// <param name="Line">Its line in the journal.</param>
/// <param name="WasThere">Whether it had been written before.</param>
public sealed record AppendedLine(JournalLine Line, bool WasThere)
{
    /// <summary>How the journal is with it; nothing where it had been written before.</summary>
    public JournalStamp Stamp { get; init; }
}

/// <summary>Something could not be kept or read; the message says what is in the way and, where there is one, a cure.</summary>
public sealed class JobStoreException(string message, Exception? inner = null) : Exception(message, inner);
