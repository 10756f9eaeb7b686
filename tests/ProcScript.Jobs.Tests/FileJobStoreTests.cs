using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Jobs.Tests;

/// <summary>Jobs in folders.</summary>
public sealed class FileJobStoreTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("jobs-").FullName;

    [Fact]
    public async Task An_event_that_is_sent_again_is_one_event()
    {
        var (store, job) = await OpenAsync();
        var first = await store.AppendAsync(job, Event("a"), Stop);
        var again = await new FileJobStore(_root).AppendAsync(job, Event("a") with { Text = "otherwise" }, Stop);

        Assert.False(first.WasThere);
        Assert.True(again.WasThere);
        Assert.Equal(first.Line.Hash, again.Line.Hash);
        Assert.Equal(2, (await store.ReadAsync(job, Stop)).Lines.Length);
    }

    [Fact]
    public async Task Many_who_write_at_once_lose_nothing_and_double_nothing()
    {
        const int writers = 6;
        const int each = 40;
        var (store, job) = await OpenAsync();
        FileJobStore[] stores = [store, new(_root), new(_root)];
        await Task.WhenAll(Enumerable.Range(0, writers).Select(async writer =>
        {
            for (var i = 0; i < each; i++)
            {
                // Half of all is sent twice, by way of another program's view of the folder.
                await stores[writer % stores.Length].AppendAsync(job, Event($"{writer}-{i}"), Stop);
                if (i % 2 == 0)
                {
                    await stores[(writer + 1) % stores.Length].AppendAsync(job, Event($"{writer}-{i}"), Stop);
                }
            }
        }));

        var reading = await store.ReadAsync(job, Stop);
        Assert.Null(reading.Fault);
        Assert.Equal(1 + (writers * each), reading.Lines.Length);
        Assert.Equal(reading.Lines.Length, reading.Lines.Select(line => line.Event.Id).Distinct().Count());
    }

    [Fact]
    public async Task What_was_being_written_when_the_power_went_gives_way_to_the_next_line()
    {
        var (store, job) = await OpenAsync();
        await store.AppendAsync(job, Event("a"), Stop);
        var path = Path.Combine(_root, job, JournalFile.Name);
        await File.AppendAllTextAsync(path, "{\"number\":3,\"id\":\"half", Stop);

        await new FileJobStore(_root).AppendAsync(job, Event("b"), Stop);

        var reading = await store.ReadAsync(job, Stop);
        Assert.Equal((null, 0), (reading.Fault, reading.Torn));
        Assert.Equal(["opened", "a", "b"], reading.Lines.Select(line => line.Event.Id));
    }

    [Fact]
    public async Task Nothing_is_added_to_a_journal_that_was_changed_or_cut()
    {
        var (store, job) = await OpenAsync();
        await store.AppendAsync(job, Event("a"), Stop);
        var path = Path.Combine(_root, job, JournalFile.Name);
        var before = await File.ReadAllTextAsync(path, Stop);
        await File.WriteAllTextAsync(path, before.Replace("\"a\"", "\"z\"", StringComparison.Ordinal), Stop);

        var changed = await Assert.ThrowsAsync<JobStoreException>(() => new FileJobStore(_root).AppendAsync(job, Event("b"), Stop));
        await File.WriteAllTextAsync(path, before[..before.IndexOf('\n', StringComparison.Ordinal)], Stop);
        var cut = await Assert.ThrowsAsync<JobStoreException>(() => store.AppendAsync(job, Event("b"), Stop));

        Assert.Contains("line 2", changed.Message, StringComparison.Ordinal);
        Assert.Contains("shorter", cut.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("..")]
    [InlineData("../else")]
    [InlineData("a/b")]
    [InlineData(".hidden")]
    [InlineData("a\\b")]
    [InlineData("")]
    [InlineData("a\0b")]
    public async Task A_name_leads_nowhere_else(string name)
    {
        await Assert.ThrowsAsync<JobStoreException>(() => new FileJobStore(_root).ReadAsync(name, Stop));
    }

    [Theory]
    [InlineData("../journal.jsonl")]
    [InlineData("photos/../../x")]
    [InlineData("/etc/x")]
    [InlineData("photos//x")]
    [InlineData("c:x")]
    public async Task A_path_leads_nowhere_else(string path)
    {
        var (store, job) = await OpenAsync();

        await Assert.ThrowsAsync<JobStoreException>(() => store.ReadFileAsync(job, path, Stop));
        await Assert.ThrowsAsync<JobStoreException>(() => store.AddFilesAsync(job, new Dictionary<string, byte[]> { [path] = [1] }, Stop));
    }

    [Fact]
    public async Task A_file_never_changes_once_it_is_there()
    {
        var (store, job) = await OpenAsync();
        await store.AddFilesAsync(job, new Dictionary<string, byte[]> { ["photos/a.png"] = [1, 2] }, Stop);
        await store.AddFilesAsync(job, new Dictionary<string, byte[]> { ["photos/a.png"] = [1, 2] }, Stop);

        await Assert.ThrowsAsync<JobStoreException>(() => store.AddFilesAsync(job, new Dictionary<string, byte[]> { ["photos/a.png"] = [1, 3] }, Stop));
        Assert.Equal([1, 2], await store.ReadFileAsync(job, "photos/a.png", Stop));
    }

    [Fact]
    public async Task Two_jobs_of_one_name_are_told_apart()
    {
        var (store, first) = await OpenAsync();
        var (_, second) = await OpenAsync();

        Assert.NotEqual(first, second);
        Assert.Equal([first, second], await store.ListAsync(Stop));
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static JobEvent Event(string id) => new() { Id = id, Kind = EventKind.Note, At = DemoJobs.Day, By = "Kern", Text = id };

    private async Task<(FileJobStore Store, string Job)> OpenAsync()
    {
        FileJobStore store = new(_root);
        return (store, await store.CreateAsync("4711-seat", new Dictionary<string, byte[]> { ["pack/plan.json"] = [1] }, Event("opened") with { Kind = EventKind.Opened }, Stop));
    }
}
