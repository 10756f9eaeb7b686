using System.Globalization;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>
/// Commands that write are stopped at random moments: no file is ever half-written or lost. A few times with every run of the tests, and as
/// often as the environment variable <c>PROCSCRIPT_INTERRUPTS</c> says, for each verb; <c>PROCSCRIPT_PROGRAM</c> names another program than
/// the one that the tests were built with.
/// </summary>
public sealed class InterruptTests
{
    private const string CountVariable = "PROCSCRIPT_INTERRUPTS";

    private static int Times { get; } =
        Environment.GetEnvironmentVariable(CountVariable) is { Length: > 0 } typed ? int.Parse(typed, CultureInfo.InvariantCulture) : 2;

    private static int Files => Times > 2 ? 40 : 8;

    [Theory]
    [InlineData("build")]
    [InlineData("fix")]
    [InlineData("format")]
    public async Task Whenever_it_is_stopped_every_file_is_the_old_one_or_the_new_one(string verb)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "Signals are sent with kill.");
        using var job = await WritingJob.OfAsync(verb, Files);
        Random random = new(Times);
        var (untouched, partly, done, left) = (0, 0, 0, 0);
        for (var i = 0; i < Times; i++)
        {
            job.Reset();
            var signal = i % 2 == 0 ? "INT" : "KILL";
            using var run = WritingRun.Start(job.Folder, job.Arguments);
            // The start of a program writes nothing: most of the stops fall where something may be.
            await Task.Delay(job.Usual * (i % 5 == 0 ? random.NextDouble() : 0.5 + (0.6 * random.NextDouble())), TestContext.Current.CancellationToken);
            run.Signal(signal);
            var (code, error) = await run.EndAsync();

            Assert.Contains(code, signal == "INT" ? new[] { 130, 0 } : [137, 0]);
            Assert.Equal("", error);
            var fresh = job.AssertWhole();
            (untouched, partly, done) = fresh == 0 ? (untouched + 1, partly, done) : fresh == job.Changes ? (untouched, partly, done + 1) : (untouched, partly + 1, done);
            left += job.Leftovers().Any() ? 1 : 0;
        }

        job.Reset();
        await job.RunAsync();
        Assert.Equal(job.After, job.Read());
        Assert.Empty(job.Leftovers());
        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{verb}: stopped {Times} times; {untouched} before it wrote, {partly} amid its files, {done} after; {left} times files without a name lay there"));
    }

    [Theory]
    [InlineData("build")]
    [InlineData("fix")]
    [InlineData("format")]
    public async Task Two_at_once_do_what_one_does(string verb)
    {
        using var job = await WritingJob.OfAsync(verb, Files);
        for (var i = 0; i < Math.Max(1, Times / 10); i++)
        {
            job.Reset();
            using var first = WritingRun.Start(job.Folder, job.Arguments);
            using var second = WritingRun.Start(job.Folder, job.Arguments);
            foreach (var (code, error) in new[] { await first.EndAsync(), await second.EndAsync() })
            {
                // Who comes to a file that the other has mended meanwhile leaves it alone and says so.
                Assert.True(code == 0 ? error.Length == 0 : code == 2 && error.Contains("was changed by somebody else meanwhile", StringComparison.Ordinal), error);
            }

            Assert.Equal(job.After, job.Read());
            Assert.Empty(job.Leftovers());
        }
    }
}
