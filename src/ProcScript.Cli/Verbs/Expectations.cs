using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Expecting;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>The files of expectations that the user asked about, and the library that they are about.</summary>
/// <param name="Store">The library.</param>
/// <param name="Files">The files, in the order of their paths.</param>
internal sealed record Expectations(DiskSourceStore Store, ImmutableArray<ExpectFile> Files)
{
    /// <summary>Finds and reads them: named ones, and those below named folders. With a named one goes the folder it lies in.</summary>
    /// <exception cref="UsageException">Something named is not there, or cannot be read.</exception>
    public static Expectations Find(InputRequest request, Surroundings around)
    {
        var full = request.Paths.Select(path => (Typed: path, Full: Path.GetFullPath(path.Length == 0 ? "." : path, around.CurrentFolder))).ToList();
        var sources = full.Select(one => IsNamed(one.Full) ? Path.GetDirectoryName(one.Full)! : one.Typed);
        DiskSourceStore store = new(SourceSelection.Find(request with { Paths = [.. sources] }, around.CurrentFolder), around.OpenInput);
        var files = full
            .SelectMany(one => Directory.Exists(one.Full) ? ProcFiles.In(one.Full, ProcFiles.IsExpectation) : IsNamed(one.Full) ? [one.Full] : [])
            .Select(file => RelativePath.Inside(store.Selection.Root, file))
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);
        return new Expectations(store, [.. files.Select(path => ExpectFile.Parse(path, TextOf(store, path)))]);
    }

    /// <summary>Checks the whole library.</summary>
    /// <exception cref="UsageException">One of its files could not be read.</exception>
    public async Task<LibraryReport> CheckAsync(CheckSettings settings, CancellationToken stop)
    {
        // Reading a standard input hears of no stop; nothing is written, and it may be left behind.
        var report = await Task.Run(() => LibraryCheck.Run(Store, settings, stop), stop).WaitAsync(stop);
        Store.RefuseUnreadable();
        return report;
    }

    private static bool IsNamed(string path) => ProcFiles.IsExpectation(path) && File.Exists(path);

    private static string TextOf(DiskSourceStore store, string path)
    {
        var reading = store.Read(path);
        return reading.Content ?? throw DiskSourceStore.Refused(path, reading);
    }
}
