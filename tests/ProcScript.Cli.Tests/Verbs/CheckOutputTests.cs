using ProcScript.Cli.Tests.Malformed;
using ProcScript.Cli.Tests.Reports;

namespace ProcScript.Cli.Tests.Verbs;

/// <summary>How much a check tells, and where to.</summary>
public sealed class CheckOutputTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task A_long_list_is_cut_short_and_says_how_to_see_all_of_it()
    {
        _disk.With("procscript.json", "{}").With("a.proc", """
            clip pin "push pin"
            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              each n in 1 .. 9 { part lamp[n] "lamp {n}" { held by 1 pin as lamp_pin[n] } }
            }
            procedure guard_off "Take the guard off" on press { stage "Guard" { release guard_pins  remove guard } }
            """);

        Assert.Contains("opens `lamp_pin[1]`, `lamp_pin[2]`, `lamp_pin[3]`, `lamp_pin[4]` and 5 more (check --all names them)\n", (await CheckAsync(".")).Output, StringComparison.Ordinal);
        Assert.Contains("`lamp_pin[8]` and `lamp_pin[9]`\n", (await CheckAsync(".", "--all")).Output, StringComparison.Ordinal);
        Assert.Contains("`lamp_pin[8]` and `lamp_pin[9]`\"", (await CheckAsync(".", "--format", "json")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Quiet_says_nothing_where_all_is_well_and_only_findings_elsewhere()
    {
        _disk.With("good.proc", Sample.Text).With("bad.proc", "}\n");

        Assert.Equal(new CliRun(ExitCode.Clean, "", ""), await CheckAsync("good.proc", "--quiet"));
        var bad = await CheckAsync("bad.proc", "--quiet");
        Assert.Equal(ExitCode.Findings, bad.Code);
        Assert.StartsWith("error PRC1001", bad.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(" in 1 file", bad.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_so_many_are_told_and_the_rest_is_counted()
    {
        _disk.With("a.proc", "}\n}\n}\n");

        var run = await CheckAsync("a.proc", "--max-findings", "1");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains(" --> a.proc:1:1\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(" --> a.proc:2:1\n", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("\n2 more findings not shown\n\n3 errors in 1 file\n", run.Output, StringComparison.Ordinal);
        Assert.Equal("3 more findings not shown\n\n3 errors in 1 file\n", (await CheckAsync("a.proc", "--max-findings", "0")).Output);
    }

    [Fact]
    public async Task Many_findings_are_summed_up_by_rule()
    {
        _disk.With("a.proc", string.Concat(Enumerable.Repeat("}\n", 20))).With("b.proc", "use \"gone.proc\"\n");

        Assert.EndsWith("\n\n20  PRC1001 unexpected-text\n 1  PRC1104 missing-file\n\n21 errors in 2 files\n", (await CheckAsync(".")).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("20  PRC1001", (await CheckAsync("a.proc")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_time_is_told_at_a_terminal_or_on_request()
    {
        _disk.With("good.proc", Sample.Text);

        Assert.EndsWith(": all proven; 0.00 s\n", (await CheckAsync("good.proc", "--time")).Output, StringComparison.Ordinal);
        Assert.EndsWith(
            ": all proven; 0.00 s\n",
            (await CliRun.AtAsync(_disk.Path, ["check", "good.proc"], input: null, around => around with { OutputIsTerminal = true })).Output,
            StringComparison.Ordinal);
        Assert.EndsWith(": all proven\n", (await CheckAsync("good.proc")).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    [InlineData("github")]
    [InlineData("gitlab")]
    [InlineData("junit")]
    public async Task A_file_holds_what_the_output_would(string format)
    {
        using ReportedLibrary library = new();

        var printed = await library.CheckAsync("--format", format);
        var written = await library.CheckAsync("--format", format, "-o", "out/report");

        Assert.Equal(printed.Output, library.Disk.Read("out/report"));
        Assert.Equal(printed.Output, (await library.CheckAsync("--format", format)).Output);
        Assert.Equal(printed.Code, written.Code);
        Assert.Single(written.Output.TrimEnd('\n').Split('\n'));
        Assert.Single(library.Disk.Files(), file => file.StartsWith("out/", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_file_that_cannot_be_written_is_a_wrong_call()
    {
        _disk.With("good.proc", Sample.Text).WithFolder("out");

        var run = await CheckAsync("good.proc", "-o", "out");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("procscript: cannot write '", run.Error, StringComparison.Ordinal);
    }

    private Task<CliRun> CheckAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, ["check", .. arguments]);
}
