using System.Text;

namespace ProcScript.Cli.Tests.Malformed;

/// <summary>Whatever stands in a file, the user gets a finding or an all-clear: no stack trace, no hang, no lost output.</summary>
[Slow]
public sealed class MalformedInputTests
{
    /// <summary>Nothing is timed: this only keeps a hang from holding up the suite.</summary>
    private const int HangMilliseconds = 300_000;

    private static readonly Dictionary<string, MalformedInput> Inputs =
        new[] { BytesThatAreNoText.All, BrokenSentences.All, AbsurdSizes.All, TangledLibraries.All }
            .SelectMany(inputs => inputs)
            .ToDictionary(input => input.Name);

    public static TheoryData<string> Names => [.. Inputs.Keys];

    [Theory(Timeout = HangMilliseconds)]
    [MemberData(nameof(Names))]
    public async Task A_check_ends_with_findings_or_an_all_clear(string name)
    {
        var input = Inputs[name];
        using TemporaryFolder library = new();
        foreach (var (path, bytes) in input.Files)
        {
            library.With(path, bytes);
        }

        var run = (await CliRun.AtAsync(library.Path, ["check", ".", "--root", "."], input: null, stop: TestContext.Current.CancellationToken)).AssertNoBug();

        Assert.Equal("", run.Error);
        Assert.True(input.Code == run.Code, $"{input.Code} was expected and not {run.Code}:\n{Head(run.Output)}");
        Assert.Equal(input.Code != ExitCode.Clean, run.Output.Contains("error PRC", StringComparison.Ordinal));
        Assert.Matches("\n$", run.Output);
    }

    [Theory(Timeout = HangMilliseconds)]
    [InlineData(1)]
    [InlineData(7)]
    public async Task Every_beginning_of_a_text_is_checked(int step)
    {
        for (var length = 0; length < Sample.Text.Length; length += step * 11)
        {
            var text = Encoding.UTF8.GetBytes(Sample.Text[..length]);
            var run = (await CliRun.AtAsync(Path.GetTempPath(), ["check", "-"], text, stop: TestContext.Current.CancellationToken)).AssertNoBug();

            Assert.NotEqual("", run.Output);
        }
    }

    [Fact]
    public async Task The_sample_that_is_broken_here_is_whole()
    {
        var run = await CliRun.AtAsync(Path.GetTempPath(), ["check", "-"], Encoding.UTF8.GetBytes(Sample.Text));

        Assert.Equal("checked 1 procedure in 1 file: all proven\n", run.Output);
    }

    [Fact]
    public void There_are_at_least_fifty_inputs()
    {
        Assert.InRange(Inputs.Count, 50, int.MaxValue);
    }

    private static string Head(string text) => text.Length <= 2000 ? text : text[..2000] + "…";
}
