using ProcScript.Floor.Desk;
using ProcScript.Floor.Index;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Tests.Boards;

/// <summary>The index saves reading, and is believed nothing that it did not write.</summary>
public sealed class BoardIndexTests
{
    private const int Jobs = 12;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_start_reads_only_what_has_changed()
    {
        using var shop = await KeptAsync();
        await shop.TellAsync(Path.Combine(shop.Root, (await shop.Store.ListAsync(Stop))[3]));

        shop.Start();
        await shop.AssertIsRightAsync();
        await shop.Board.LookAsync(Stop);

        Assert.Equal(1, shop.Store.Reads);
        Assert.Equal("", shop.Said.ToString());
    }

    [Theory]
    [InlineData("gone")]
    [InlineData("empty")]
    [InlineData("garbage")]
    [InlineData("another database")]
    [InlineData("a folder")]
    public async Task Without_a_good_index_all_is_read_and_the_next_start_has_one(string what)
    {
        using var shop = await KeptAsync();
        File.Delete(shop.IndexFile);
        switch (what)
        {
            case "empty":
                await File.WriteAllBytesAsync(shop.IndexFile, [], Stop);
                break;
            case "garbage":
                await File.WriteAllTextAsync(shop.IndexFile, new string('x', 10_000), Stop);
                break;
            case "another database":
                new BoardIndex(shop.IndexFile, "other jobs", shop.Said).Write(new Dictionary<string, KnownLine> { ["x"] = new(new JournalStamp(1, 1), null, "x") });
                break;
            case "a folder":
                Directory.CreateDirectory(shop.IndexFile);
                break;
        }

        shop.Start();
        await shop.AssertIsRightAsync();
        shop.Board.Keep();
        Assert.Equal(Jobs, shop.Store.Reads);
        shop.Start();
        await shop.AssertIsRightAsync();

        Assert.Equal(what == "a folder" ? Jobs : 0, shop.Store.Reads);
        Assert.Equal(what is not ("gone" or "empty"), shop.Said.ToString().Contains(shop.IndexFile, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_bit_that_turned_is_no_word_of_a_job()
    {
        using var shop = await KeptAsync();
        var (right, bytes) = (shop.Index().Read(), await File.ReadAllBytesAsync(shop.IndexFile, Stop));
        Assert.Equal(Jobs, right.Count);
        for (var at = 0; at < bytes.Length; at += Math.Max(1, bytes.Length / Depth.Of(800)))
        {
            byte[] turned = [.. bytes];
            turned[at] ^= 0x10;
            await File.WriteAllBytesAsync(shop.IndexFile, turned, Stop);

            Assert.All(shop.Index().Read(), line => Assert.Equal(right[line.Key], line.Value));
        }
    }

    [Fact]
    public async Task An_index_that_is_taken_away_while_the_server_runs_is_written_whole_again()
    {
        using var shop = await KeptAsync();
        File.Delete(shop.IndexFile);
        await shop.OpenAsync();
        await shop.Board.LookAsync(Stop);

        shop.Board.Keep();

        Assert.Equal(Jobs + 1, shop.Index().Read().Count);
    }

    [Fact]
    public async Task Two_servers_on_one_machine_share_an_index()
    {
        using var shop = await KeptAsync();
        ShopBoard other = new(new FileJobStore(shop.Root), shop.Index(), new ChangeFeed(), TimeProvider.System);
        await Task.WhenAll(Enumerable.Range(0, 20).Select(async i =>
        {
            await Task.Yield();
            var board = i % 2 == 0 ? shop.Board : other;
            await shop.OpenAsync(i % 3 == 0 ? "" : "2026");
            await board.LookAsync(Stop);
        }));
        shop.Board.Keep();
        other.Keep();

        shop.Start();
        await shop.AssertIsRightAsync();

        Assert.Equal("", shop.Said.ToString());
    }

    [Fact]
    public async Task Who_asks_while_somebody_looks_shares_one_look_more()
    {
        using var shop = await KeptAsync();
        var asked = Enumerable.Range(0, 50).Select(_ => shop.Board.LookAsync(Stop)).ToList();

        await Task.WhenAll(asked);

        Assert.Equal(Jobs, shop.Store.Reads);
    }

    [Fact]
    public async Task A_server_keeps_its_index_where_it_is_told_to()
    {
        using var shop = await KeptAsync();
        var folder = Directory.CreateDirectory(Path.Combine(Path.GetDirectoryName(shop.Root)!, "own")).FullName;
        FloorOptions options = new() { Folder = shop.Root, Port = 0, Pairing = false, IndexFolder = folder };
        var file = options.IndexFile!;
        CountingStore first = new(new FileJobStore(shop.Root)), second = new(new FileJobStore(shop.Root)), third = new(new FileJobStore(shop.Root));

        await ServeAsync(options, first, file);
        await ServeAsync(options, second, file);
        await ServeAsync(options with { RebuildIndex = true }, third, file);

        Assert.Equal((Jobs, 0, Jobs), (first.Reads, second.Reads, third.Reads));
        Assert.Equal([file], Directory.EnumerateFiles(folder));
    }

    [Fact]
    public void The_index_of_other_jobs_is_another_file_and_none_lies_among_the_jobs()
    {
        var folder = Path.GetTempPath();
        FloorOptions options = new() { Folder = Path.Combine(folder, "jobs"), IndexFolder = Path.Combine(folder, "jobs", "index") };
        var other = options with { Postgres = true, Connection = "Host=db;Database=jobs;Username=a;Password=secret", IndexFolder = folder };

        Assert.Contains("within the folder of the jobs", options.Fault(), StringComparison.Ordinal);
        Assert.Null((options with { IndexFolder = Path.Combine(folder, "jobs-index") }).Fault());
        Assert.Contains("--rebuild-index", (options with { IndexFolder = null, RebuildIndex = true }).Fault(), StringComparison.Ordinal);
        Assert.NotEqual((options with { IndexFolder = folder }).IndexFile, other.IndexFile);
        Assert.Equal(other.Jobs, (other with { Connection = "Host=db;Database=jobs;Username=b" }).Jobs);
    }

    /// <summary>Starts a server, has it show its board and keep it, and stops it.</summary>
    private static async Task ServeAsync(FloorOptions options, CountingStore store, string file)
    {
        using StringWriter said = new();
        await using var server = await FloorServer.StartAsync(options, store, said, Stop);
        using HttpClient client = new() { BaseAddress = new Uri(server.Addresses[0]) };
        var board = await client.WaitForAsync("/api/jobs", now => File.Exists(file) && new BoardIndex(file, options.Jobs, said).Read().Count == Jobs);
        Assert.Equal(Jobs, board["jobs"]!.AsArray().Count);
        Assert.Equal("", said.ToString());
    }

    /// <summary>A shop whose board is kept in its index.</summary>
    private static async Task<BoardShop> KeptAsync()
    {
        BoardShop shop = new();
        for (var i = 0; i < Jobs; i++)
        {
            await shop.OpenAsync();
        }

        await shop.Board.LookAsync(Stop);
        shop.Board.Keep();
        return shop;
    }
}
