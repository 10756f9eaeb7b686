using ProcScript.Floor.Postgres;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;
using ProcScript.Jobs.Tests;

namespace ProcScript.Floor.Tests.Stores;

/// <summary>What every store of jobs keeps to, wherever it keeps them.</summary>
public abstract class JobStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Another program's view of the same jobs, each time.</summary>
    private protected abstract Task<IJobStore> OpenStoreAsync();

    [Fact]
    public async Task A_job_is_there_with_its_files_and_its_first_event()
    {
        var store = await OpenStoreAsync();

        var job = await OpenJobAsync(store);

        Assert.Equal([job], await store.ListAsync(Stop));
        Assert.Equal(["pack/plan.json"], await store.ListFilesAsync(job, "pack", Stop));
        Assert.Empty(await store.ListFilesAsync(job, "pac", Stop));
        Assert.Equal([1], await store.ReadFileAsync(job, "pack/plan.json", Stop));
        Assert.Null(await store.ReadFileAsync(job, "pack/other.json", Stop));
        Assert.Equal("opened", Assert.Single((await store.ReadAsync(job, Stop)).Lines).Event.Id);
    }

    [Fact]
    public async Task An_event_that_is_sent_again_is_one_event()
    {
        var store = await OpenStoreAsync();
        var job = await OpenJobAsync(store);

        var first = await store.AppendAsync(job, Event("a"), Stop);
        await store.AppendAsync(job, Event("b"), Stop);
        var again = await (await OpenStoreAsync()).AppendAsync(job, Event("a") with { Text = "otherwise" }, Stop);
        var opened = await store.AppendAsync(job, Event("opened"), Stop);

        Assert.Equal((false, true, true), (first.WasThere, again.WasThere, opened.WasThere));
        Assert.Equal(first.Line.Hash, again.Line.Hash);
        Assert.Equal(1, opened.Line.Event.Number);
        Assert.Equal(3, (await store.ReadAsync(job, Stop)).Lines.Length);
    }

    [Fact]
    public async Task Many_who_write_at_once_lose_nothing_and_double_nothing()
    {
        const int writers = 6;
        const int each = 20;
        IJobStore[] stores = [await OpenStoreAsync(), await OpenStoreAsync(), await OpenStoreAsync()];
        var job = await OpenJobAsync(stores[0]);
        await Task.WhenAll(Enumerable.Range(0, writers).Select(async writer =>
        {
            for (var i = 0; i < each; i++)
            {
                await stores[writer % stores.Length].AppendAsync(job, Event($"{writer}-{i}"), Stop);
                if (i % 2 == 0)
                {
                    await stores[(writer + 1) % stores.Length].AppendAsync(job, Event($"{writer}-{i}"), Stop);
                }
            }
        }));

        var reading = await stores[0].ReadAsync(job, Stop);

        Assert.Null(reading.Fault);
        Assert.Equal(1 + (writers * each), reading.Lines.Length);
        Assert.Equal(reading.Lines.Length, reading.Lines.Select(line => line.Event.Id).Distinct().Count());
    }

    [Fact]
    public async Task That_a_journal_has_grown_shows_by_its_stamp()
    {
        var store = await OpenStoreAsync();
        var job = await OpenJobAsync(store);
        var before = (await store.StampsAsync(Stop))[job];

        var written = await store.AppendAsync(job, Event("a"), Stop);
        var after = (await store.StampsAsync(Stop))[job];
        await store.AppendAsync(job, Event("a"), Stop);

        Assert.True(after.Extent > before.Extent);
        Assert.NotEqual(after.Changed, before.Changed);
        Assert.Equal(after, (await store.StampsAsync(Stop))[job]);
        Assert.Equal(after, await store.StampAsync(job, Stop));
        Assert.Equal(after, written.Stamp);
    }

    [Fact]
    public async Task A_file_never_changes_once_it_is_there()
    {
        var store = await OpenStoreAsync();
        var job = await OpenJobAsync(store);
        await store.AddFilesAsync(job, new Dictionary<string, byte[]> { ["photos/a.png"] = [1, 2] }, Stop);
        await store.AddFilesAsync(job, new Dictionary<string, byte[]> { ["photos/a.png"] = [1, 2] }, Stop);

        await Assert.ThrowsAsync<JobStoreException>(() => store.AddFilesAsync(job, new Dictionary<string, byte[]> { ["photos/a.png"] = [1, 3] }, Stop));
        Assert.Equal([1, 2], await store.ReadFileAsync(job, "photos/a.png", Stop));
    }

    [Fact]
    public async Task Two_jobs_of_one_name_are_told_apart()
    {
        var store = await OpenStoreAsync();
        var names = await Task.WhenAll(OpenJobAsync(store), OpenJobAsync(await OpenStoreAsync()));

        Assert.Equal(names.Order(StringComparer.Ordinal), await store.ListAsync(Stop));
        Assert.Equal(2, names.Distinct().Count());
    }

    [Theory]
    [InlineData("../else")]
    [InlineData("no-such-job")]
    [InlineData("x'; drop table floor_job; --")]
    public async Task A_job_that_is_not_there_is_told_so(string job)
    {
        var store = await OpenStoreAsync();

        await Assert.ThrowsAsync<JobStoreException>(() => store.ReadAsync(job, Stop));
        await Assert.ThrowsAsync<JobStoreException>(() => store.AppendAsync(job, Event("a"), Stop));
    }

    private static JobEvent Event(string id) => new() { Id = id, Kind = EventKind.Note, At = DemoJobs.Day, By = "Kern", Text = id };

    private static Task<string> OpenJobAsync(IJobStore store) =>
        store.CreateAsync("4711-seat", new Dictionary<string, byte[]> { ["pack/plan.json"] = [1] }, Event("opened") with { Kind = EventKind.Opened }, Stop);
}

/// <summary>Jobs in folders.</summary>
public sealed class FolderStoreTests : JobStoreTests, IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("jobs-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private protected override Task<IJobStore> OpenStoreAsync() => Task.FromResult<IJobStore>(new FileJobStore(_root));
}

/// <summary>Jobs in PostgreSQL.</summary>
public sealed class PostgresStoreTests(PostgresFixture postgres) : JobStoreTests, IAsyncDisposable
{
    private Npgsql.NpgsqlDataSource? _database;

    public async ValueTask DisposeAsync()
    {
        if (_database is not null)
        {
            await _database.DisposeAsync();
        }
    }

    [Fact]
    public async Task A_folder_of_jobs_is_brought_in_line_by_line_and_goes_on_there()
    {
        var stop = TestContext.Current.CancellationToken;
        using StringWriter told = new();
        var root = Directory.CreateTempSubdirectory("jobs-");
        FileJobStore files = new(root.FullName);
        var job = await FloorJobs.OpenAsync(files);
        await files.AppendAsync(job, new JobEvent { Id = "a", Kind = EventKind.Done, At = DemoJobs.Day, By = "Kern", Step = 1 }, stop);
        var store = await OpenStoreAsync();

        await BroughtIn.FromAsync(files, store, told, stop);
        await BroughtIn.FromAsync(files, store, told, stop);

        var (there, here) = (await files.ReadAsync(job, stop), await store.ReadAsync(job, stop));
        Assert.Equal(there.Lines.Select(line => line.Hash), here.Lines.Select(line => line.Hash));
        Assert.Single((await LoadedJob.ReadAsync(store, job, stop)).Replay.Done);
        root.Delete(recursive: true);
    }

    private protected override async Task<IJobStore> OpenStoreAsync() =>
        await PostgresJobStore.OpenAsync(_database ??= await postgres.NewDatabaseAsync(), TestContext.Current.CancellationToken);
}
