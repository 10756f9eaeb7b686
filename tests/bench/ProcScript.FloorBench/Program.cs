using System.Diagnostics;
using Npgsql;
using ProcScript.Floor;
using ProcScript.Floor.Postgres;
using ProcScript.FloorBench;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Stores;

// 50 tablets, each of which tells and watches, 10,000 events a minute on one server. First argument: for how many seconds; second: how PostgreSQL is
// reached, where the jobs are to be kept there. With `shop` in front: `shop make FOLDER JOBS [nested]` makes a folder of jobs as a shop has it after
// years, and `shop FOLDER [INDEX]` measures a server on it, with the
// index of its board in a folder.
const int Tablets = 50;
const int Jobs = 10;
const int EventsAMinute = 10_000;

if (args is ["shop", "make", var place, var count, ..])
{
    Console.WriteLine($"{ShopTree.Make(place, int.Parse(count, System.Globalization.CultureInfo.InvariantCulture), args is [.., "nested"]) >> 20} MB of journals");
    return 0;
}

if (args is ["shop", var tree, ..])
{
    await ShopBench.RunAsync(Path.GetFullPath(tree), args is [_, _, var index] ? Path.GetFullPath(index) : null);
    return 0;
}

var seconds = args.Length > 0 ? int.Parse(args[0], System.Globalization.CultureInfo.InvariantCulture) : 60;
var folder = Directory.CreateTempSubdirectory("floor-bench-").FullName;
await using var database = args.Length > 1 ? NpgsqlDataSource.Create(args[1]) : null;
IJobStore store = database is null ? new FileJobStore(folder) : await PostgresJobStore.OpenAsync(database, CancellationToken.None);
List<string> jobs = [];
for (var i = 0; i < Jobs; i++)
{
    jobs.Add(await BenchJobs.OpenAsync(store));
}

await using var server = await FloorServer.StartAsync(new FloorOptions { Folder = folder, Port = 0, Pairing = false }, store, TextWriter.Null, CancellationToken.None);
var pause = TimeSpan.FromSeconds(60.0 * Tablets / EventsAMinute);
using CancellationTokenSource end = new();
var tablets = Enumerable.Range(0, Tablets).Select(i => new BenchTablet(new Uri(server.Addresses[0]), jobs[i % Jobs], i)).ToList();
var watching = tablets.Select(tablet => tablet.WatchAsync(end.Token)).ToList();
// What is told first waits until its job is played for the first time: that is not what is measured.
await Task.WhenAll(tablets.Select(tablet => tablet.NowAsync(end.Token)));
Console.WriteLine($"{Tablets} tablets on {Jobs} jobs, {EventsAMinute} events a minute, {seconds} s, {(database is null ? "files" : "PostgreSQL")}");
var watch = Stopwatch.StartNew();
await Task.WhenAll(tablets.Select(tablet => tablet.TellAsync(TimeSpan.FromSeconds(seconds), pause)));
var took = watch.Elapsed;
await end.CancelAsync();
await Task.WhenAll(watching);

var latencies = tablets.SelectMany(tablet => tablet.Latencies).Order().ToList();
Console.WriteLine($"told {latencies.Count} events in {took.TotalSeconds:0} s: {60 * latencies.Count / took.TotalSeconds:0} a minute");
Console.WriteLine($"until told safe: median {latencies[latencies.Count / 2].TotalMilliseconds:0.0} ms, p99 {latencies[latencies.Count * 99 / 100].TotalMilliseconds:0.0} ms, most {latencies[^1].TotalMilliseconds:0.0} ms");
Console.WriteLine($"looked how a job stands {tablets.Sum(tablet => tablet.Looks)} times");
Console.WriteLine($"memory, tablets' part in it too: {Environment.WorkingSet >> 20} MB, managed {GC.GetTotalMemory(forceFullCollection: true) >> 20} MB");
var written = 0;
foreach (var job in jobs)
{
    var ids = (await store.ReadAsync(job, CancellationToken.None)).Lines.Skip(1).Select(line => line.Event.Id).ToList();
    written += ids.Distinct(StringComparer.Ordinal).Count() == ids.Count ? ids.Count : throw new InvalidOperationException($"'{job}' has an event twice.");
}

Console.WriteLine(written == latencies.Count ? "nothing lost, nothing doubled" : $"LOST: {written} of {latencies.Count} are written down");
Directory.Delete(folder, recursive: true);
return written == latencies.Count ? 0 : 1;
