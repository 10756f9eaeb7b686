using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using ProcScript.Floor;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;

namespace ProcScript.FloorBench;

/// <summary>A shop with thousands of jobs in one folder: how long it is from the start to the board, and what keeps the board up to date.</summary>
internal static class ShopBench
{
    private const int Times = 20;

    /// <summary>Measures.</summary>
    /// <param name="folder">The folder of jobs, which <see cref="ShopTree"/> has made.</param>
    /// <param name="index">The folder of the index; null where none is kept.</param>
    public static async Task RunAsync(string folder, string? index)
    {
        var watch = Stopwatch.StartNew();
        FileJobStore store = new(folder);
        await using var server = await FloorServer.StartAsync(new FloorOptions { Folder = folder, Port = 0, Pairing = false, IndexFolder = index }, store, TextWriter.Null, CancellationToken.None);
        using HttpClient client = new() { BaseAddress = new Uri(server.Addresses[0]) };
        Say("listening", watch);
        var board = await client.GetByteArrayAsync("/api/jobs");
        Say($"first board, {board.Length >> 10} kB", watch);
        Console.WriteLine($"  most memory until then {Process.GetCurrentProcess().PeakWorkingSet64 >> 20} MB, now {Environment.WorkingSet >> 20} MB, managed {GC.GetTotalMemory(forceFullCollection: true) >> 20} MB");
        await EachAsync("board again", () => client.GetByteArrayAsync("/api/jobs"));
        await EachAsync("board with closed jobs", () => client.GetByteArrayAsync("/api/jobs?closed=yes"));
        var job = ShopTree.NameOf(0);
        watch.Restart();
        await client.GetByteArrayAsync($"/api/jobs/{job}");
        Say("a job is opened", watch);
        await EachAsync("event on it", () => client.PostAsJsonAsync($"/api/jobs/{job}/events", new JsonObject { ["events"] = new JsonArray(Note()) }));
        await EachAsync("its line on the board", () => client.GetByteArrayAsync($"/api/jobs?job={job}"));
        await EachAsync("board after an event from outside", async () =>
        {
            await store.AppendAsync(ShopTree.NameOf(25), new JobEvent { Id = Guid.NewGuid().ToString("N"), Kind = EventKind.Note, At = DateTimeOffset.UtcNow, By = "Bench", Text = "x" }, CancellationToken.None);
            await client.GetByteArrayAsync("/api/jobs");
        });
        var before = Process.GetCurrentProcess().TotalProcessorTime;
        watch.Restart();
        await Task.Delay(TimeSpan.FromSeconds(10));
        Console.WriteLine($"idle: {100 * (Process.GetCurrentProcess().TotalProcessorTime - before) / watch.Elapsed:0.0} % of one processor");
    }

    private static JsonObject Note() => new() { ["id"] = Guid.NewGuid().ToString("N"), ["kind"] = "note", ["at"] = DateTimeOffset.UtcNow.ToString("O"), ["by"] = "Bench", ["text"] = "A note." };

    private static async Task EachAsync(string what, Func<Task> work)
    {
        var took = new List<double>();
        for (var i = 0; i < Times; i++)
        {
            var watch = Stopwatch.StartNew();
            await work();
            took.Add(watch.Elapsed.TotalMilliseconds);
        }

        took.Sort();
        Console.WriteLine($"{what}: median {took[Times / 2]:0.0} ms, most {took[^1]:0.0} ms");
    }

    private static void Say(string what, Stopwatch watch) =>
        Console.WriteLine($"{what}: {watch.Elapsed.TotalMilliseconds:0} ms, {Process.GetCurrentProcess().TotalProcessorTime.TotalMilliseconds:0} ms of processors since the start");
}
