using System.Collections.Concurrent;
using ProcScript.Analysis.Plans;

namespace ProcScript.Browser.Tests;

/// <summary>The packs that were printed so far, by plan, paper and whether each card has its sheets.</summary>
public sealed class PrintedPacks
{
    private readonly ConcurrentDictionary<(Plan, string, bool), Task<IReadOnlyList<PrintedPage>>> _packs = new();

    /// <summary>The pages of a pack, printed with <paramref name="print"/> by whoever asks first.</summary>
    internal Task<IReadOnlyList<PrintedPage>> GetAsync((Plan Plan, string Paper, bool Apart) pack, Func<Task<IReadOnlyList<PrintedPage>>> print) =>
        _packs.GetOrAdd(pack, _ => print());
}
