using ProcScript.Model.Binding;
using ProcScript.Model.Sources;

namespace ProcScript.Model;

/// <summary>Binds a library: from files to machines and procedures.</summary>
public static class LibraryBinder
{
    /// <summary>
    /// Reads, parses and binds every file of a store. Any text gives a library; what is wrong with it stands in
    /// <see cref="Library.Findings"/>. The same files give the same library, however many threads take part.
    /// </summary>
    /// <param name="store">The files.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static Library Bind(ISourceStore store, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        return new LibraryBinding(store, cancellation).Run();
    }
}
