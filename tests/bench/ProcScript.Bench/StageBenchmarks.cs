using BenchmarkDotNet.Attributes;
using ProcScript.Analysis;
using ProcScript.Bench.Libraries;
using ProcScript.Model;
using ProcScript.Model.Sources;

namespace ProcScript.Bench;

/// <summary>Where the time of a check goes, room by room.</summary>
[MemoryDiagnoser]
public class StageBenchmarks
{
    private MemorySourceStore _store = new([]);

    /// <summary>The size of the library.</summary>
    [Params(100, 1000)]
    public int Files { get; set; }

    /// <summary>Makes the library.</summary>
    [GlobalSetup]
    public void Write() => _store = new MemorySourceStore(LibraryWriter.Write(Files));

    /// <summary>Text to model.</summary>
    [Benchmark]
    public Library Bind() => LibraryBinder.Bind(_store);

    /// <summary>Text to verdict.</summary>
    [Benchmark]
    public LibraryReport Check() => LibraryCheck.Run(_store);
}
