using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Serving;

/// <summary>
/// Has garbage collected in the moment after an answer, when whoever types reads or thinks, and long before the runtime would: it would do so
/// in the middle of an answer, and of much at once.
/// </summary>
/// <param name="listener">Who tells the client.</param>
internal sealed class QuietCollections(IAnalysisListener listener) : IAnalysisListener
{
    /// <summary>So many bytes are collected within the time of a key stroke.</summary>
    private const long Enough = 6 << 20;

    private static readonly TimeSpan UntilTold = TimeSpan.FromMilliseconds(1);

    private long _collected;

    /// <inheritdoc/>
    public void Analysed(LibraryAnalysis analysis)
    {
        listener.Analysed(analysis);
        var allocated = GC.GetTotalAllocatedBytes();
        if (allocated - _collected >= Enough)
        {
            _collected = allocated;
            _ = CollectAsync();
        }
    }

    /// <inheritdoc/>
    public void Failed(Exception fault) => listener.Failed(fault);

    private static async Task CollectAsync()
    {
        await Task.Delay(UntilTold).ConfigureAwait(false);
        GC.Collect(0, GCCollectionMode.Forced, blocking: true);
    }
}
