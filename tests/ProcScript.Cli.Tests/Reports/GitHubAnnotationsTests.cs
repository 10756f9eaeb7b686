using System.Text.RegularExpressions;

namespace ProcScript.Cli.Tests.Reports;

/// <summary>
/// The commands are taken apart as GitHub's documentation of workflow commands and its runner's source (ActionCommand) say: values of
/// properties have %25, %0D, %0A, %3A and %2C, the data %25, %0D and %0A. <c>tests/outputs</c> holds them against GitHub's own writer.
/// </summary>
public sealed partial class GitHubAnnotationsTests : IDisposable
{
    private readonly ReportedLibrary _library = new();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task Every_finding_is_one_command_and_the_last_line_is_none()
    {
        var run = await _library.CheckAsync("--format", "github");
        var lines = run.Output.TrimEnd('\n').Split('\n');

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Equal(6, lines.Length);
        Assert.All(lines[..^1], line => Assert.Matches(Command(), line));
        Assert.DoesNotMatch(Command(), lines[^1]);
        Assert.Contains(" in 7 files; 1 allowed by comments; ", lines[^1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Awkward_letters_come_back_as_they_were()
    {
        var commands = Read((await _library.CheckAsync("--format", "github")).Output).ToList();

        var awkward = commands.Single(command => command.Properties["file"] == "shop/" + ReportedLibrary.AwkwardFile);
        Assert.Equal("error", awkward.Name);
        Assert.Equal("2", awkward.Properties["line"]);
        Assert.Equal("PRC1101 unknown-name", awkward.Properties["title"]);
        Assert.Equal("63", awkward.Properties["col"]);
        Assert.StartsWith("the machine `m` has nothing called `cuver`\n", awkward.Data, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stretch_of_several_lines_has_no_columns()
    {
        using TemporaryFolder disk = new();
        disk.With("a.proc", "tool a \"A\"\n/* \n*/ tool b \"x\n");
        var commands = Read((await CliRun.AtAsync(disk.Path, "check", ".", "--format", "github")).Output).ToList();

        Assert.NotEmpty(commands);
        Assert.All(commands, command => Assert.Equal(command.Properties["line"] == command.Properties["endLine"], command.Properties.ContainsKey("col")));
    }

    private static IEnumerable<(string Name, Dictionary<string, string> Properties, string Data)> Read(string output) =>
        from line in output.Split('\n')
        let match = Command().Match(line)
        where match.Success
        select (
            match.Groups["name"].Value,
            match.Groups["properties"].Value.Split(',').Select(property => property.Split('=', 2)).ToDictionary(
                pair => pair[0],
                pair => Unescape(pair[1].Replace("%3A", ":", StringComparison.Ordinal).Replace("%2C", ",", StringComparison.Ordinal))),
            Unescape(match.Groups["data"].Value));

    private static string Unescape(string text) =>
        text.Replace("%0D", "\r", StringComparison.Ordinal).Replace("%0A", "\n", StringComparison.Ordinal).Replace("%25", "%", StringComparison.Ordinal);

    [GeneratedRegex("^::(?<name>error|warning|notice) (?<properties>[^:]+)::(?<data>.*)$")]
    private static partial Regex Command();
}
