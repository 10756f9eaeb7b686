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

    [Theory]
    [InlineData("back ", "bench_out")]
    [InlineData("together bench_out ", "clean-2")]
    [InlineData("reach ", "lid_bolts")]
    [InlineData("why ", "lid")]
    [InlineData("map ", "press")]
    [InlineData("map --job ", "bench_out")]
    [InlineData("job open ", "clean-2")]
    [InlineData("crew . --procedure ", "clean")]
    [InlineData("build . --certified ", "gas=")]
    [InlineData("model . --machine ", "press")]
    public async Task What_is_named_in_the_library_completes(string typed, string offered)
    {
        _disk.With(
            "press.proc",
            """
            certificate gas "gas certificate"
            tool key "key"
            fastener bolt "bolt" { drive key }
            machine press "Press" { part lid "lid" { held by 2 bolt as lid_bolts } }
            procedure bench_out "Take the lid off" on press { goal remove lid  stage "Lid" { undo lid_bolts  remove lid } work { } }
            procedure clean(turns in 1, 2) "Clean" on press { goal remove lid  stage "Lid" { undo lid_bolts  remove lid } work { } }

            """);

        var offers = (await CliRun.AtAsync(_disk.Path, $"[suggest:{typed.Length}]", typed)).Output.Split('\n');

        Assert.Contains(offered, offers);
    }

    [Fact]
    public async Task Where_no_library_can_be_read_nothing_completes_and_nothing_fails()
    {
        var run = await CliRun.AtAsync(_disk.Path, "[suggest:21]", "back --in nothing.here ");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
    }

    private sealed class Zoned(TimeSpan offset) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("there", offset, "there", "there");

        public override DateTimeOffset GetUtcNow() => new(2026, 1, 15, 18, 0, 0, TimeSpan.Zero);
    }
}
