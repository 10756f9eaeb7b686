using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Jobs.Tests;

/// <summary>Jobs that a shop keeps in a folder for each year and customer.</summary>
public sealed class JobTreeTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("tree-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_job_is_found_wherever_it_lies_below_the_folder()
    {
        await OpenAsync("", "a");
        await OpenAsync("2025", "b");
        await OpenAsync("2026/Müller & Söhne", "c");
        Directory.CreateDirectory(Path.Combine(_root, "2026", "nothing yet"));
        FileJobStore store = new(_root);

        Assert.Equal(["a", "b", "c"], await store.ListAsync(Stop));
        Assert.Equal(["a", "b", "c"], (await store.StampsAsync(Stop)).Keys.Order());
        Assert.Equal(Path.Combine(_root, "2026", "Müller & Söhne", "c"), store.FolderOf("c"));
        await store.AppendAsync("c", Event("note"), Stop);
        Assert.Equal(2, (await new FileJobStore(Path.Combine(_root, "2026", "Müller & Söhne")).ReadAsync("c", Stop)).Lines.Length);
        Assert.Equal((await store.StampsAsync(Stop))["c"], await store.StampAsync("c", Stop));
    }

    [Fact]
    public async Task Nothing_is_looked_for_in_a_job_behind_a_link_or_in_what_is_hidden()
    {
        var job = await OpenAsync("", "a");
        await OpenAsync($"{job}/photos", "inside");
        await OpenAsync(".floor", "hidden");
        await OpenAsync(".opening-1", "half");
        var elsewhere = Directory.CreateTempSubdirectory("elsewhere-").FullName;
        try
        {
            await new FileJobStore(elsewhere).CreateAsync("linked", new Dictionary<string, byte[]>(), Event("opened") with { Kind = EventKind.Opened }, Stop);
            Directory.CreateSymbolicLink(Path.Combine(_root, "link"), elsewhere);
            Directory.CreateSymbolicLink(Path.Combine(_root, "round"), _root);

            Assert.Equal(["a"], await new FileJobStore(_root).ListAsync(Stop));
        }
        finally
        {
            Directory.Delete(elsewhere, recursive: true);
        }
    }

    [Fact]
    public async Task A_job_that_was_put_away_is_still_called_so()
    {
        await OpenAsync("", "a");
        FileJobStore store = new(_root);
        await store.AppendAsync("a", Event("before"), Stop);
        Directory.CreateDirectory(Path.Combine(_root, "2025"));
        Directory.Move(Path.Combine(_root, "a"), Path.Combine(_root, "2025", "a"));

        await store.AppendAsync("a", Event("after"), Stop);

        Assert.Equal(["opened", "before", "after"], (await store.ReadAsync("a", Stop)).Lines.Select(line => line.Event.Id));
    }

    [Fact]
    public async Task Of_two_that_are_called_the_same_none_is_guessed()
    {
        await OpenAsync("", "a");
        await OpenAsync("old", "a");
        FileJobStore store = new(_root);
        Assert.Equal(["a"], await store.ListAsync(Stop));

        var refusal = await Assert.ThrowsAsync<JobStoreException>(() => store.ReadAsync("a", Stop));
        await Assert.ThrowsAsync<JobStoreException>(() => store.AppendAsync("a", Event("b"), Stop));
        Directory.Delete(Path.Combine(_root, "old"), recursive: true);
        await store.ListAsync(Stop);

        Assert.Contains($"'a' and '{Path.Combine("old", "a")}'", refusal.Message, StringComparison.Ordinal);
        Assert.Single((await store.ReadAsync("a", Stop)).Lines);
    }

    [Fact]
    public async Task A_name_that_a_job_further_down_has_is_taken()
    {
        await OpenAsync("2025", "a");

        Assert.Equal("a-2", await new FileJobStore(_root).CreateAsync("a", new Dictionary<string, byte[]>(), Event("opened") with { Kind = EventKind.Opened }, Stop));
    }

    [Fact]
    public async Task A_folder_that_is_away_is_no_folder_without_jobs()
    {
        await OpenAsync("", "a");
        FileJobStore store = new(_root);
        await store.ListAsync(Stop);
        Directory.Move(_root, $"{_root}-away");
        try
        {
            await Assert.ThrowsAsync<JobStoreException>(() => store.StampsAsync(Stop));
        }
        finally
        {
            Directory.Move($"{_root}-away", _root);
        }

        Assert.Equal(["a"], await store.ListAsync(Stop));
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static JobEvent Event(string id) => new() { Id = id, Kind = EventKind.Note, At = DemoJobs.Day, By = "Kern", Text = id };

    private async Task<string> OpenAsync(string shelf, string name)
    {
        var folder = Path.Combine(_root, shelf);
        await new FileJobStore(folder).CreateAsync(name, new Dictionary<string, byte[]>(), Event("opened") with { Kind = EventKind.Opened }, Stop);
        return Path.GetRelativePath(_root, Path.Combine(folder, name));
    }
}
