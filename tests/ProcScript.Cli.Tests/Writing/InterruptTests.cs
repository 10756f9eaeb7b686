using System.Globalization;
using ProcScript.Cli.Tests.Processes;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>
/// Commands that write are stopped at random moments: no file is ever half-written or lost. Once with every run of the slow tests, and as
/// often as the environment variable <c>PROCSCRIPT_INTERRUPTS</c> says, for each verb; <c>PROCSCRIPT</c> names another program than
/// the one that the tests were built with.
/// </summary>
[Slow]
public sealed class InterruptTests(WritingJobs jobs) : IClassFixture<WritingJobs>
{
    private static int Times => WritingJobs.Times;

    [Theory]
    [InlineData("build")]
    [InlineData("fix")]
    [InlineData("format")]
    [InlineData("cache")]
    [InlineData("baseline")]
    public async Task Whenever_it_is_stopped_every_file_is_the_old_one_or_the_new_one(string verb)
    {
        Signals.SkipWithout();
        var job = await jobs.ForAsync(verb);
        Random random = new(Times);
        InterruptCount count = new();
        for (var i = 0; i < Times; i++)
        {
            job.Reset();
            // Once each, some verbs are interrupted and some are killed.
            var signal = (i + verb.Length) % 2 == 0 ? StopSignal.Interrupt : StopSignal.Kill;
            using var run = WritingRun.Start(job.Folder, job.Arguments);
            var end = run.EndAsync();
            // Any moment may be the worst one, but most of a run writes nothing: three of four stops wait for the first file.
            if (i % 8 is 3 or 4)
            {
                await Task.Delay(job.Usual * random.NextDouble(), TestContext.Current.CancellationToken);
            }
            else
            {
                while (!end.IsCompleted && !job.IsWriting(run))
                {
                    // A notice of the system would come too late for a single file.
                }


                // Soon rather than late: one file is written in no time.
                Spin(job.UsualWriting * Math.Pow(random.NextDouble(), 3));
            }

            var isWriting = !end.IsCompleted && job.IsWriting(run);
            run.Signal(signal);
            var (code, error) = await end;

            Assert.Contains(code, signal == StopSignal.Interrupt ? new[] { 130, 0 } : [137, 0]);
            Assert.Equal("", error);
            count.Add(job.AssertWhole(), job.Changes, isWriting, job.Leftovers().Any());
        }

        job.Reset();
        await job.RunAsync();
        Assert.Equal(job.After, job.Read());
        Assert.Empty(job.Leftovers());
        TestContext.Current.TestOutputHelper?.WriteLine($"{verb}: {count}");
        // Where it is stopped often, stops that all miss the writing would show nothing.
        Assert.True(Times < 20 || count.Amid * 20 >= Times, $"{verb}: {count}");
    }

    [Theory]
    [InlineData("build")]
    [InlineData("fix")]
    [InlineData("format")]
    [InlineData("cache")]
    [InlineData("baseline")]
    public async Task Two_at_once_do_what_one_does(string verb)
    {
        var job = await jobs.ForAsync(verb);
        for (var i = 0; i < Math.Max(1, Times / 10); i++)
        {
            job.Reset();
            await BothAsync(job.Folder, job.Arguments, job.Arguments);
            Assert.Equal(job.After, job.Read());
            Assert.Empty(job.Leftovers());
        }
    }

    [Fact]
    public async Task Mending_beside_laying_out_leaves_what_one_of_them_wrote_and_both_can_go_on()
    {
        using TemporaryFolder disk = new();
        var before = Enumerable.Range(0, WritingJobs.IsLarge ? 40 : 8).ToDictionary(i => string.Create(CultureInfo.InvariantCulture, $"job{i}.proc"), WritingSource.ForBoth);
        var mended = await AfterAsync(disk, before, "fix");
        var laidOut = await AfterAsync(disk, before, "format");
        var both = await AfterAsync(disk, mended, "format");
        var turned = await AfterAsync(disk, laidOut, "fix");
        for (var i = 0; i < Math.Max(1, Times / 10); i++)
        {
            Put(disk, before);
            await BothAsync(disk.Path, ["fix", "."], ["format", "."]);

            Assert.Equal(before.Keys.Order(StringComparer.Ordinal), disk.Files());
            Assert.All(before.Keys, path => Assert.Contains(disk.Read(path), new[] { mended[path], laidOut[path], both[path], turned[path] }));
            await AloneAsync(disk, "fix");
            await AloneAsync(disk, "format");
            Assert.Equal(both, before.Keys.ToDictionary(path => path, disk.Read));
        }
    }

    /// <summary>Who comes to a file that the other has changed meanwhile leaves it alone and says so; else nothing is said.</summary>
    private static async Task BothAsync(string folder, string[] first, string[] second)
    {
        using var one = WritingRun.Start(folder, first);
        using var other = WritingRun.Start(folder, second);
        foreach (var (code, error) in new[] { await one.EndAsync(), await other.EndAsync() })
        {
            Assert.True(code == 0 ? error.Length == 0 : code == 2 && error.Contains("was changed by somebody else meanwhile", StringComparison.Ordinal), error);
        }
    }

    private static async Task<Dictionary<string, string>> AfterAsync(TemporaryFolder disk, Dictionary<string, string> before, string verb)
    {
        Put(disk, before);
        await AloneAsync(disk, verb);
        var after = before.Keys.ToDictionary(path => path, disk.Read);
        Assert.All(before, file => Assert.NotEqual(file.Value, after[file.Key]));
        return after;
    }

    private static void Put(TemporaryFolder disk, Dictionary<string, string> files)
    {
        foreach (var (path, text) in files)
        {
            disk.With(path, text);
        }
    }

    private static async Task AloneAsync(TemporaryFolder disk, string verb)
    {
        var run = await CliRun.AtAsync(disk.Path, verb, ".");
        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
    }

    /// <summary>Waits more exactly than a timer does.</summary>
    private static void Spin(TimeSpan time)
    {
        var start = TimeProvider.System.GetTimestamp();
        while (TimeProvider.System.GetElapsedTime(start) < time)
        {
            Thread.SpinWait(10);
        }
    }
}
