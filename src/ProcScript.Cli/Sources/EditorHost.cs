using System.Diagnostics;
using ProcScript.Cli.Verbs;
using ProcScript.LanguageServer;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Sources;

/// <summary>Lends the language server the disk, by the rules of the other commands.</summary>
/// <param name="today">Tells which day it is.</param>
internal sealed class EditorHost(Func<DateOnly> today) : IServerHost, IDisposable
{
    private readonly Lazy<DirectoryInfo> _scratch = new(() => Directory.CreateTempSubdirectory("procscript-"));

    /// <inheritdoc/>
    public string Version => ProductVersion.Text;

    /// <inheritdoc/>
    public DateOnly Today => today();

    /// <inheritdoc/>
    public string FindRoot(string folder) => LibraryFolder.Find([folder], folder);

    /// <inheritdoc/>
    public IReadOnlyCollection<string> ListSources(string folder)
    {
        try
        {
            return Directory.Exists(folder) ? [.. ProcFiles.In(folder)] : [];
        }
        catch (UsageException)
        {
            // The files that are open are served all the same.
            return [];
        }
    }

    /// <inheritdoc/>
    public SourceReading Read(string root, string path) => new LibraryDisk(root).Read(path);

    /// <inheritdoc/>
    public FigureFile FindFigure(string root, string path) => DiskFigures.FindAnew(root, path);

    /// <inheritdoc/>
    public string Write(string? folder, string name, string text)
    {
        var path = Path.Combine(folder ?? _scratch.Value.FullName, name);
        try
        {
            using PendingFiles files = new();
            files.Add(path, text);
            files.Commit(replace: true);
            return path;
        }
        catch (UsageException failure)
        {
            throw new IOException(failure.Message, failure);
        }
    }

    /// <inheritdoc/>
    public async Task WaitForProcessAsync(int processId, CancellationToken cancellation)
    {
        try
        {
            using var process = Process.GetProcessById(processId);
            await process.WaitForExitAsync(cancellation);
        }
        catch (ArgumentException)
        {
            // There is none of that number any more.
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_scratch.IsValueCreated)
        {
            try
            {
                _scratch.Value.Delete(recursive: true);
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                // A page that somebody still looks at stays.
            }
        }
    }
}
