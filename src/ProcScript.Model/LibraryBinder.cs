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
    public static Library Bind(ISourceStore store, CancellationToken cancellation = default) => Bind(store, new BindingMemory(isKept: false), cancellation);

    /// <summary>
    /// Binds the files again: what is the same as before, with all that it reads, is the same object as before. What comes out is what a
    /// binding without a memory gives.
    /// </summary>
    /// <param name="store">The files.</param>
    /// <param name="memory">What came of the last binding. One binding uses it at a time; another waits.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static Library Bind(ISourceStore store, BindingMemory memory, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(memory);
        lock (memory.Gate)
        {
            return new LibraryBinding(store, memory, cancellation).Run();
        }
    }
}
