using ProcScript.Model.Sources;

namespace ProcScript.Model.Tests;

/// <summary>Binds texts.</summary>
internal static class Samples
{
    /// <summary>The name of the file that <see cref="Bind(string)"/> puts its text into.</summary>
    public const string File = "x.proc";

    /// <summary>A library of one file.</summary>
    public static Library Bind(string text) => LibraryBinder.Bind(MemorySourceStore.Of(File, text), TestContext.Current.CancellationToken);

    /// <summary>A library of several files.</summary>
    public static Library Bind(params (string Path, string Text)[] files)
    {
        var store = new MemorySourceStore(files.Select(file => KeyValuePair.Create(file.Path, file.Text)));
        return LibraryBinder.Bind(store, TestContext.Current.CancellationToken);
    }

    /// <summary>Code and message of every finding.</summary>
    public static IEnumerable<string> Words(this Library library) =>
        library.Findings.Select(finding => $"{finding.Rule.Code} {finding.Message}");
}
