using System.Text;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class CheckVerbTests : IDisposable
{
    private const string HeldStill = "remove cover";

    /// <summary>Two warnings: one for each joint that comes off without a tool.</summary>
    private static readonly string NoTool = Sample.Another.Replace("drive socket_13", "", StringComparison.Ordinal);

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task A_clean_library_gives_one_line()
    {
        _disk.With("machine.proc", Sample.Machine).With("p.proc", "use \"machine.proc\"\n" + Sample.Procedure);

        Assert.Equal(new CliRun(ExitCode.Clean, "checked 1 procedure in 2 files: all proven\n", ""), await CheckAsync("."));
    }

    [Fact]
    public async Task A_library_without_procedures_says_so()
    {
        _disk.With("machine.proc", Sample.Machine);

        Assert.Equal(new CliRun(ExitCode.Clean, "checked 1 file: no findings\n", ""), await CheckAsync("machine.proc"));
    }

    [Fact]
    public async Task Findings_are_counted_at_the_end()
    {
        _disk.With("a.proc", Sample.Steps(HeldStill)).With("b.proc", NoTool);

        var run = await CheckAsync(".");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Equal("", run.Error);
        Assert.EndsWith("\n\n1 error, 2 warnings in 2 files; 1 of 2 procedures proven\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("error PRC3001 removed-while-held: ", run.Output, StringComparison.Ordinal);
        Assert.Contains("\n  --> a.proc:", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_procedure_that_was_not_run_is_counted_as_such()
    {
        _disk.With("a.proc", Sample.Steps("remove cuver")).With("b.proc", Sample.Another);

        Assert.EndsWith(
            "\n1 error in 2 files; 1 of 2 procedures proven, 1 not checked for errors in the text\n",
            (await CheckAsync(".")).Output,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("error", ExitCode.Clean)]
    [InlineData("warning", ExitCode.Findings)]
    [InlineData("hint", ExitCode.Findings)]
    [InlineData("never", ExitCode.Clean)]
    public async Task A_warning_fails_the_run_only_on_request(string failOn, object code)
    {
        _disk.With("a.proc", NoTool);

        Assert.Equal(code, (await CheckAsync("a.proc", "--fail-on", failOn)).Code);
    }

    [Fact]
    public async Task Never_means_never_for_errors_too()
    {
        _disk.With("a.proc", "}");

        Assert.Equal(ExitCode.Clean, (await CheckAsync("a.proc", "--fail-on", "never")).Code);
    }

    [Fact]
    public async Task Of_a_used_file_only_the_errors_are_shown()
    {
        _disk.With("a.proc", "use \"b.proc\"\nuse \"c.proc\"\n").With("b.proc", NoTool).With("c.proc", "}\n");

        var alone = await CheckAsync("a.proc");
        var both = await CheckAsync(".");

        Assert.EndsWith("\n1 error in 1 file\n", alone.Output, StringComparison.Ordinal);
        Assert.EndsWith("\n1 error, 2 warnings in 3 files; 1 procedure proven\n", both.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_may_use_what_lies_beside_its_folder()
    {
        _disk.With("procscript.json", "{}").With("catalog/machine.proc", Sample.Machine)
            .With("jobs/p.proc", "use \"../catalog/machine.proc\"\n" + Sample.Procedure);

        var run = await CliRun.AtAsync(_disk["jobs"], "check", "p.proc");

        Assert.Equal(new CliRun(ExitCode.Clean, "checked 1 procedure in 1 file: all proven\n", ""), run);
    }

    [Fact]
    public async Task The_standard_input_is_checked_and_may_use_files()
    {
        _disk.With("machine.proc", Sample.Machine);

        var good = await CliRun.AtAsync(_disk.Path, ["check", "-"], Encoding.UTF8.GetBytes("use \"machine.proc\"\n" + Sample.Procedure));
        var bad = await CliRun.AtAsync(_disk.Path, ["check", "-"], "}"u8.ToArray());

        Assert.Equal("checked 1 procedure in 1 file: all proven\n", good.Output);
        Assert.Contains("\n --> <stdin>:1:1\n", bad.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Findings, bad.Code);
    }

    [Fact]
    public async Task What_is_not_there_is_a_wrong_call()
    {
        Assert.Equal(new CliRun(ExitCode.Usage, "", "procscript: there is no file or folder 'nothing'.\n"), await CheckAsync("nothing"));
        Assert.Equal(new CliRun(ExitCode.Usage, "", "procscript: the folder '.' holds no .proc file.\n"), await CheckAsync("."));
    }

    [Fact]
    public async Task A_file_that_cannot_be_read_is_a_finding_and_fails_the_run_as_unreadable()
    {
        File.CreateSymbolicLink(_disk["self.proc"], _disk["self.proc"]);
        _disk.With("a.proc", "}");

        var run = await CheckAsync(".");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("error PRC1107 unreadable-file: ", run.Output, StringComparison.Ordinal);
        Assert.Contains(" --> a.proc:1:1\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Findings_stand_in_the_order_of_files_and_lines()
    {
        _disk.With("b.proc", "}\nsupply s \"S\" { single use }\n}\n").With("a.proc", "\n}\n");

        var places = (await CheckAsync("b.proc", "a.proc")).Output.Split('\n').Where(line => line.Contains("-->", StringComparison.Ordinal)).Select(line => line.Trim());

        Assert.Equal(["--> a.proc:2:1", "--> b.proc:1:1", "--> b.proc:3:1"], places);
    }

    [Theory]
    [InlineData(true, null, "auto", true)]
    [InlineData(true, "1", "auto", false)]
    [InlineData(false, null, "auto", false)]
    [InlineData(false, "1", "always", true)]
    [InlineData(true, null, "never", false)]
    public async Task Colour_is_for_terminals_and_those_who_ask(bool terminal, string? noColour, string choice, bool coloured)
    {
        _disk.With("a.proc", "}");

        var run = await CliRun.AtAsync(_disk.Path, ["check", "a.proc", "--color", choice], input: null, around => around with
        {
            OutputIsTerminal = terminal,
            Variable = name => name == "NO_COLOR" ? noColour : null,
        });

        Assert.Equal(coloured, run.Output.Contains('\u001B'));
    }

    [Fact]
    public async Task The_same_library_gives_the_same_bytes()
    {
        for (var i = 0; i < 20; i++)
        {
            _disk.With($"f{i}.proc", $"use \"f{(i + 1) % 20}.proc\"\n{Sample.Steps(HeldStill).Replace("machine m ", $"machine m{i} ", StringComparison.Ordinal)}");
        }

        var first = await CheckAsync(".");

        Assert.Equal(first, await CheckAsync("."));
        Assert.NotEqual(ExitCode.Bug, first.Code);
    }

    private Task<CliRun> CheckAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, ["check", .. arguments]);
}
