using System.Diagnostics;

namespace ProcScript.Cli.Tests.Packaging;

/// <summary>The manual page: that it tells of every command and option, and that the programs that show such pages have nothing to say against it.</summary>
public sealed class ManualTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task It_names_every_command_and_every_option()
    {
        var page = (await CliRun.AtAsync(_disk.Path, "manual")).Output.Replace("\\-", "-", StringComparison.Ordinal);

        var root = CommandLine.Root(InMemory.Surroundings(_disk.Path, TextWriter.Null, TextWriter.Null, input: null));
        Assert.NotEmpty(root.Subcommands);
        foreach (var verb in root.Subcommands)
        {
            Assert.Contains($".SS \"procscript {verb.Name}", page, StringComparison.Ordinal);
            Assert.All(verb.Options, option => Assert.Contains(option.Name, page, StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("mandoc", "-Tlint", "-Wwarning")]
    [InlineData("groff", "-man", "-Tutf8", "-ww", "-z")]
    public async Task Typesetters_have_nothing_to_say_against_it(string program, params string[] arguments)
    {
        var found = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, program)));
        Assert.SkipUnless(found, $"{program} is not installed.");
        _disk.With("procscript.1", (await CliRun.AtAsync(_disk.Path, "manual")).Output);

        using var process = Process.Start(new ProcessStartInfo(program, [.. arguments, Path.Combine(_disk.Path, "procscript.1")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var said = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)
            + await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);

        // A page whose date changes would not be the same twice: it has none.
        Assert.All(said.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.Contains("missing date", line, StringComparison.Ordinal));
    }
}
