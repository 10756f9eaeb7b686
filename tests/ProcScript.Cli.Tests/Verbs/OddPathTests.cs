using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Verbs;

/// <summary>Paths and files that are odd, and are told of as what they are.</summary>
public sealed class OddPathTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task What_begins_with_a_slash_is_a_path_and_no_plea_for_help() => Assert.Equal(
        new CliRun(ExitCode.Usage, "", "procscript: there is no file or folder '/h'.\n"), await CliRun.AtAsync(_disk.Path, "check", "/h"));

    [Fact]
    public async Task A_file_that_is_not_UTF8_could_not_be_read()
    {
        _disk.With("a.proc", [0x61, 0xFF]);

        var run = await CliRun.AtAsync(_disk.Path, "check", "a.proc");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("error PRC1107 unreadable-file: `a.proc` is not a text in UTF-8: Byte 2 (0xFF)", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData('a')]
    [InlineData('ä')]
    public async Task A_file_whose_name_is_as_long_as_it_may_be_is_written(char letter)
    {
        var name = new string(letter, letter == 'a' ? 250 : 125) + ".proc";
        _disk.With(name, "  tool lever \"lever\"\n");

        var run = await CliRun.AtAsync(_disk.Path, "format", ".");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.Equal("tool lever \"lever\"\n", _disk.Read(name));
        Assert.Equal([name], _disk.Files());
    }

    [Fact]
    public async Task Settings_that_a_link_leads_to_and_that_are_gone_are_missed()
    {
        _disk.With("lib/sub/a.proc", Sample.Machine);
        File.CreateSymbolicLink(_disk["lib/procscript.json"], "gone.json");

        var run = await CliRun.AtAsync(_disk["lib/sub"], "check", ".");

        Assert.Contains("procscript.json", run.Output, StringComparison.Ordinal);
        Assert.NotEqual(ExitCode.Clean, run.Code);
    }

    [Fact]
    public async Task A_diff_of_fixes_fails_where_errors_are_left()
    {
        _disk.With("a.proc", Sample.Steps("remove nothing_alike_there"));

        Assert.Equal(ExitCode.Findings, (await CliRun.AtAsync(_disk.Path, "fix", "a.proc", "--diff")).Code);
    }

    [Fact]
    public async Task The_day_is_that_of_universal_time()
    {
        _disk.With("a.proc", "// proc: allow PRC5001 until 2026-01-15 because \"x\"\ntool lever \"lever\"\n");

        async Task<string> AtAsync(TimeSpan offset) => (await CliRun.AtAsync(
            _disk.Path, ["check", "a.proc"], input: null, around => around with { Clock = new Zoned(offset) })).Output;

        Assert.Equal(await AtAsync(TimeSpan.FromHours(-12)), await AtAsync(TimeSpan.FromHours(14)));
    }

    [Fact]
    public async Task The_codes_of_rules_complete_and_their_names()
    {
        var offers = (await CliRun.AtAsync(_disk.Path, "[suggest:12]", "explain PRC3")).Output.Split('\n');

        Assert.Contains("PRC3001", offers);
        Assert.Contains("removed-while-held", (await CliRun.AtAsync(_disk.Path, "[suggest:11]", "explain rem")).Output.Split('\n'));
    }

    private sealed class Zoned(TimeSpan offset) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("there", offset, "there", "there");

        public override DateTimeOffset GetUtcNow() => new(2026, 1, 15, 18, 0, 0, TimeSpan.Zero);
    }
}
