using System.Collections.Immutable;
using ProcScript.Floor.Desk;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Index;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;
using ProcScript.Jobs.Tests;

namespace ProcScript.Floor.Tests.Boards;

/// <summary>A folder of jobs, the index of its board beside it, and a server's board that is started anew at will.</summary>
internal sealed class BoardShop : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("shop-").FullName;
    private int _told;

    public BoardShop() => Start();

    /// <summary>The folder of the jobs.</summary>
    public string Root => Path.Combine(_folder, "jobs");

    /// <summary>The file of the index.</summary>
    public string IndexFile => Path.Combine(_folder, "index", "board.sqlite");

    /// <summary>The server's store, which counts what is read.</summary>
    public CountingStore Store { get; private set; } = null!;

    /// <summary>The server's board.</summary>
    public ShopBoard Board { get; private set; } = null!;

    /// <summary>What the server has said of its index.</summary>
    public StringWriter Said { get; } = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Starts the server anew: it knows what the index knows.</summary>
    public void Start()
    {
        Directory.CreateDirectory(Root);
        Store = new CountingStore(new FileJobStore(Root));
        Board = new ShopBoard(Store, Index(), new ChangeFeed(), TimeProvider.System);
    }

    /// <summary>The index, as a server that starts now would read it.</summary>
    public BoardIndex Index() => new(IndexFile, Root, Said);

    /// <summary>Opens a job by another program, in a folder below that of the jobs.</summary>
    public Task<string> OpenAsync(string shelf = "")
    {
        var opened = Event(EventKind.Opened);
        return new FileJobStore(Path.Combine(Root, shelf)).CreateAsync(
            $"job-{_told}", ImmutableDictionary<string, byte[]>.Empty, opened with { Job = new JobHead("1", "j", $"Job {new string('x', _told)}", "m", "Machine", $"{_told}", "1", [], "r1", 9, "test") }, Stop);
    }

    /// <summary>Another program writes into a journal.</summary>
    public Task TellAsync(string folder) => new FileJobStore(Path.GetDirectoryName(folder)!).AppendAsync(Path.GetFileName(folder), Event((_told % 4) switch { 0 => EventKind.Pause, 1 => EventKind.Broke, 2 => EventKind.Resume, _ => EventKind.Done }), Stop);

    /// <summary>This server writes into a journal, as its desk does.</summary>
    public async Task WriteAsync(string job)
    {
        var written = await Store.AppendAsync(job, Event(EventKind.Note), Stop);
        Board.Put(job, KnownLine.Of(job, written.Stamp, await Store.ReadAsync(job, Stop)));
    }

    /// <summary>The board by journals alone, as a server without an index has it.</summary>
    public Task<Board> ByJournalsAsync() => LinesAsync(new ShopBoard(new FileJobStore(Root), null, new ChangeFeed(), TimeProvider.System));

    /// <summary>The server's board, after a look.</summary>
    public Task<Board> ByIndexAsync() => LinesAsync(Board);

    /// <summary>Holds the server's board to the journals.</summary>
    public async Task AssertIsRightAsync()
    {
        var (wanted, board) = (await ByJournalsAsync(), await ByIndexAsync());
        Assert.Equal(wanted.Jobs, board.Jobs);
        Assert.Equal(wanted.Unreadable, board.Unreadable);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static async Task<Board> LinesAsync(ShopBoard board)
    {
        await board.LookAsync(Stop);
        return await board.AsBoardAsync(withClosed: true, [], Stop);
    }

    private JobEvent Event(EventKind kind)
    {
        _told++;
        return new JobEvent { Id = $"e{_told}", Kind = kind, At = DemoJobs.Day, Logged = DemoJobs.Day.AddMinutes(_told), By = "Kern", Plan = "r1", Step = kind == EventKind.Done ? 1 + (_told % 9) : null, Text = new string('y', _told % 7), Count = 1 };
    }
}

/// <summary>A store that counts how many journals are read.</summary>
internal sealed class CountingStore(IJobStore store) : IJobStore
{
    private int _reads;

    public int Reads => _reads;

    public Task<ImmutableArray<string>> ListAsync(CancellationToken stop) => store.ListAsync(stop);

    public Task<IReadOnlyDictionary<string, JournalStamp>> StampsAsync(CancellationToken stop) => store.StampsAsync(stop);

    public Task<JournalStamp> StampAsync(string job, CancellationToken stop) => store.StampAsync(job, stop);

    public Task<string> CreateAsync(string wanted, IReadOnlyDictionary<string, byte[]> files, JobEvent opened, CancellationToken stop) => store.CreateAsync(wanted, files, opened, stop);

    public Task<JournalReading> ReadAsync(string job, CancellationToken stop)
    {
        Interlocked.Increment(ref _reads);
        return store.ReadAsync(job, stop);
    }

    public Task<AppendedLine> AppendAsync(string job, JobEvent happened, CancellationToken stop) => store.AppendAsync(job, happened, stop);

    public Task<ImmutableArray<string>> ListFilesAsync(string job, string folder, CancellationToken stop) => store.ListFilesAsync(job, folder, stop);

    public Task<byte[]?> ReadFileAsync(string job, string path, CancellationToken stop) => store.ReadFileAsync(job, path, stop);

    public Task AddFilesAsync(string job, IReadOnlyDictionary<string, byte[]> files, CancellationToken stop) => store.AddFilesAsync(job, files, stop);
}
