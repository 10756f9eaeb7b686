using System.Diagnostics;
using System.Globalization;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;

namespace ProcScript.Jobs.Tests;

/// <summary>A real program that is killed while it writes, and a disk that is full.</summary>
[Slow]
public sealed class KillTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("jobs-").FullName;

    [Fact]
    public async Task Killed_at_random_moments_nothing_acknowledged_is_lost_and_nothing_is_doubled()
    {
        var (job, random, acknowledged, kills) = (await OpenAsync(), new Random(1), 0, 0);
        while (kills < Depth.Of(1_000, few: 20))
        {
            using var keeper = Start(job, acknowledged + 1);
            acknowledged = await ReadAsync(keeper, acknowledged, 1);
            await Task.Delay(random.Next(40), Stop);
            keeper.Kill();
            acknowledged = await ReadAsync(keeper, acknowledged, int.MaxValue);
            await keeper.WaitForExitAsync(Stop);
            kills++;

            var reading = await new FileJobStore(_root).ReadAsync(job, Stop);
            Assert.Null(reading.Fault);
            var ids = reading.Lines.Select(line => line.Event.Id).ToList();
            Assert.Equal(ids.Distinct().Count(), ids.Count);
            // One may be written that nobody heard of any more: it is sent again, and is one event then.
            Assert.Equal(["opened", .. Enumerable.Range(1, ids.Count - 1).Select(i => $"e{i}")], ids);
            Assert.InRange(ids.Count - 1, acknowledged, acknowledged + 1);
        }

        Assert.True(acknowledged >= kills, $"{acknowledged} events in {kills} runs");
    }

    [Fact]
    public async Task On_a_full_disk_an_event_is_refused_and_the_journal_stays_readable()
    {
        var disk = Path.Combine(_root, "disk");
        Directory.CreateDirectory(disk);
        Assert.SkipUnless(OperatingSystem.IsLinux() && await RunAsync("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", disk), "No small disk can be mounted here: that takes root and a Linux that lets it.");
        try
        {
            FileJobStore store = new(disk);
            var job = await store.CreateAsync("full", new Dictionary<string, byte[]>(), Note("opened") with { Kind = EventKind.Opened }, Stop);
            var written = 0;
            var refusal = await Assert.ThrowsAsync<Stores.JobStoreException>(async () =>
            {
                for (; written < 10_000; written++)
                {
                    await store.AppendAsync(job, Note($"e{written}") with { Text = new string('x', 500) }, Stop);
                }
            });
            var reading = await store.ReadAsync(job, Stop);

            Assert.Contains("nothing was written", refusal.Message, StringComparison.Ordinal);
            Assert.InRange(written, 10, 200);
            Assert.Equal((null, 1 + written), (reading.Fault, reading.Lines.Length));

            // Once there is room again, the same journal goes on.
            Assert.True(await RunAsync("mount", "-o", "remount,size=256k", disk));
            await store.AppendAsync(job, Note("after"), Stop);
            Assert.Equal("after", (await new FileJobStore(disk).ReadAsync(job, Stop)).Lines[^1].Event.Id);
        }
        finally
        {
            await RunAsync("umount", disk);
        }
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static JobEvent Note(string id) => new() { Id = id, Kind = EventKind.Note, At = DemoJobs.Day, By = "Kern", Text = id };

    private Task<string> OpenAsync() => new FileJobStore(_root).CreateAsync("killed", new Dictionary<string, byte[]>(), Note("opened") with { Kind = EventKind.Opened }, Stop);

    private Process Start(string job, int first)
    {
        var program = Path.Combine(Checkout.Root, "tests", "jobs", "ProcScript.JobKeeper", "bin", Configuration, "net10.0", "ProcScript.JobKeeper.dll");
        ProcessStartInfo start = new("dotnet", [program, _root, job, first.ToString(CultureInfo.InvariantCulture), "1000000"]) { RedirectStandardOutput = true };
        return Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start");
    }

    /// <summary>The kind of build that this is: the other program is from the same.</summary>
    private static string Configuration => new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    /// <summary>Reads what was acknowledged, so many lines at the most.</summary>
    private static async Task<int> ReadAsync(Process keeper, int last, int lines)
    {
        for (; lines > 0 && await keeper.StandardOutput.ReadLineAsync(Stop) is { } line; lines--)
        {
            // The last line may have been cut off by the kill; it says less than it should then, and never more.
            last = Math.Max(last, int.Parse(line, CultureInfo.InvariantCulture));
        }

        return last;
    }

    private static async Task<bool> RunAsync(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true });
            await process!.WaitForExitAsync(Stop);
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
