using System.Text;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class FixVerbTests : IDisposable
{
    private const string Wrong = "      notice \"Wipe it.\"\n      danger \"It kills. Stay away.\"\n";
    private const string Right = "      danger \"It kills. Stay away.\"\n      notice \"Wipe it.\"\n";

    private readonly TemporaryFolder _disk = new();

    private static string Text { get; } = With(Wrong);

    private static string Mended { get; } = With(Right);

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task What_is_safe_is_mended_and_the_rest_is_counted()
    {
        _disk.With("a.proc", Text).With("sub/b.proc", Sample.Another);

        var run = await FixAsync(".");

        Assert.Equal(
            new CliRun(ExitCode.Clean, "fixed a.proc: Put the worst first (PRC5094 alerts-out-of-order)\nfixed 1 finding in 1 file; no findings left\n", ""),
            run);
        Assert.Equal((Mended, Sample.Another), (_disk.Read("a.proc"), _disk.Read("sub/b.proc")));
        Assert.Equal(["a.proc", "sub/b.proc"], _disk.Files());
        Assert.Equal(new CliRun(ExitCode.Clean, "nothing to fix; no findings left\n", ""), await FixAsync("."));
    }

    [Fact]
    public async Task A_diff_shows_what_would_change_and_writes_nothing()
    {
        _disk.With("a.proc", Text);

        var run = await FixAsync("--diff", ".");

        Assert.Equal((ExitCode.Findings, ""), (run.Code, run.Error));
        Assert.StartsWith("--- a/a.proc\n+++ b/a.proc\n@@ ", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("would fix a.proc: Put the worst first (PRC5094 alerts-out-of-order)\nwould fix 1 finding in 1 file; no findings left\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(Text, _disk.Read("a.proc"));

        _disk.With("a.proc", Mended);
        Assert.Equal(ExitCode.Clean, (await FixAsync("--diff", ".")).Code);
    }

    [Fact]
    public async Task Errors_that_are_left_fail_the_run_and_what_needs_a_look_is_named()
    {
        _disk.With("a.proc", Sample.Steps("isolate battery\nremove cover"));

        var careful = await FixAsync(".");
        Assert.Equal(ExitCode.Findings, careful.Code);
        Assert.Contains("nothing to fix; 1 finding left: 1 whose fix needs a look (--needs-look)\n", careful.Output, StringComparison.Ordinal);

        var bold = await FixAsync(".", "--needs-look");
        Assert.Equal(ExitCode.Clean, bold.Code);
        Assert.Contains("(PRC3001 removed-while-held), needs a look\n", bold.Output, StringComparison.Ordinal);
        Assert.Contains("undo cover_bolts\nremove cover", _disk.Read("a.proc"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_rules_asked_for_are_mended()
    {
        _disk.With("a.proc", Text);

        Assert.Equal("nothing to fix; 1 finding left: 1 of other rules\n", (await FixAsync(".", "--rule", "PRC3001")).Output);
        Assert.StartsWith("fixed a.proc", (await FixAsync(".", "--rule", "PRC3001", "--rule", "alerts-out-of-order")).Output, StringComparison.Ordinal);
        var unknown = await FixAsync(".", "--rule", "no-such-rule");
        Assert.Equal(ExitCode.Usage, unknown.Code);
        Assert.Contains("there is no rule 'no-such-rule'; 'procscript explain' lists all.", unknown.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Files_that_are_only_used_are_left_alone()
    {
        _disk.With("machine.proc", Text[..Text.IndexOf("procedure", StringComparison.Ordinal)])
            .With("job.proc", "use \"machine.proc\"\n" + Sample.Procedure);
        var before = _disk.Read("machine.proc");

        var run = await FixAsync("job.proc", "--needs-look");

        Assert.Equal(new CliRun(ExitCode.Clean, "nothing to fix; no findings left\n", ""), run);
        Assert.Equal(before, _disk.Read("machine.proc"));
    }

    [Fact]
    public async Task The_standard_input_goes_to_the_output_and_nothing_else_does()
    {
        Assert.Equal(new CliRun(ExitCode.Clean, Mended, ""), await CliRun.AtAsync(_disk.Path, ["fix", "-"], Encoding.UTF8.GetBytes(Text)));
        Assert.Equal(new CliRun(ExitCode.Clean, Mended, ""), await CliRun.AtAsync(_disk.Path, ["fix", "-"], Encoding.UTF8.GetBytes(Mended)));
    }

    [Fact]
    public async Task A_write_protected_file_is_named_and_no_file_is_written()
    {
        _disk.With("a.proc", Text).With("b.proc", Text.Replace("procedure p", "procedure q", StringComparison.Ordinal));
        File.SetAttributes(_disk["b.proc"], FileAttributes.ReadOnly);
        try
        {
            var run = await FixAsync(".");

            Assert.Equal((ExitCode.Usage, ""), (run.Code, run.Output));
            Assert.Equal($"procscript: cannot write '{_disk["b.proc"]}': it is write-protected.\n", run.Error);
            Assert.Equal(Text, _disk.Read("a.proc"));
            Assert.Equal(["a.proc", "b.proc"], _disk.Files());
        }
        finally
        {
            File.SetAttributes(_disk["b.proc"], FileAttributes.Normal);
        }
    }

    [Fact]
    public async Task A_file_that_is_no_text_is_left_and_fails_the_run()
    {
        _disk.With("a.proc", Text).With("b.proc", [0xFF, 0xFE, 0x20]);

        var run = (await FixAsync(".")).AssertNoBug();

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Equal((Mended, 3), (_disk.Read("a.proc"), new FileInfo(_disk["b.proc"]).Length));
    }

    private static string With(string alerts) =>
        Sample.Text.Replace("part pump \"pump\" {\n", "part pump \"pump\" {\n" + alerts, StringComparison.Ordinal);

    private Task<CliRun> FixAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, ["fix", .. arguments]);
}
