using System.Text;
using ProcScript.Analysis;
using ProcScript.Cli.Tests.Malformed;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class FormatVerbTests : IDisposable
{
    private const string Untidy = "tool   a\n";
    private const string Tidy = "tool a\n";

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task Files_that_are_laid_out_otherwise_are_written_and_no_others()
    {
        _disk.With("a.proc", Untidy).With("sub/b.proc", Tidy);
        var before = File.GetLastWriteTimeUtc(_disk["sub/b.proc"]);

        var run = await FormatAsync(".");

        Assert.Equal(new CliRun(ExitCode.Clean, "formatted a.proc\nformatted 1 of 2 files\n", ""), run);
        Assert.Equal((Tidy, Tidy), (_disk.Read("a.proc"), _disk.Read("sub/b.proc")));
        Assert.Equal(before, File.GetLastWriteTimeUtc(_disk["sub/b.proc"]));
        Assert.Equal(["a.proc", "sub/b.proc"], _disk.Files());
        Assert.Equal(new CliRun(ExitCode.Clean, "2 files laid out already\n", ""), await FormatAsync("."));
    }

    [Fact]
    public async Task A_check_names_files_and_writes_none()
    {
        _disk.With("a.proc", Untidy).With("b.proc", Tidy);

        var run = await FormatAsync("--check", ".");

        Assert.Equal(new CliRun(ExitCode.Findings, "not laid out: a.proc\n1 of 2 files not laid out\n", ""), run);
        Assert.Equal(Untidy, _disk.Read("a.proc"));
    }

    [Fact]
    public async Task A_diff_shows_lines_and_writes_none()
    {
        _disk.With("a.proc", "tool b\n" + Untidy);

        var run = await FormatAsync("--diff", "a.proc");

        Assert.Equal(
            new CliRun(ExitCode.Findings, "--- a/a.proc\n+++ b/a.proc\n@@ -1,2 +1,2 @@\n tool b\n-tool   a\n+tool a\n1 of 1 file not laid out\n", ""),
            run);
        Assert.Equal("tool b\n" + Untidy, _disk.Read("a.proc"));
    }

    [Fact]
    public async Task A_file_with_errors_in_its_text_is_left_alone_and_the_others_are_not()
    {
        _disk.With("a.proc", "tool   {").With("b.proc", Untidy).With("c.proc", [0xFF, 0xFE, 0x20]);

        var run = (await FormatAsync(".")).AssertNoBug();

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.StartsWith("error PRC1002 ", run.Output, StringComparison.Ordinal);
        Assert.Contains("left alone: a.proc, whose text has errors\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("left alone: c.proc, which is no text. It is saved as UTF-16", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("formatted b.proc\nformatted 1 of 3 files, 2 left alone\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(("tool   {", Tidy), (_disk.Read("a.proc"), _disk.Read("b.proc")));
    }

    [Fact]
    public async Task The_standard_input_goes_to_the_output_and_nothing_else_does()
    {
        Assert.Equal(new CliRun(ExitCode.Clean, Tidy, ""), await FormatInputAsync(Untidy, "-"));

        var broken = await FormatInputAsync("tool   {", "-");
        Assert.Equal((ExitCode.Findings, ""), (broken.Code, broken.Output));
        Assert.Contains("left alone: <stdin>, whose text has errors\n", broken.Error, StringComparison.Ordinal);

        Assert.Equal(
            new CliRun(ExitCode.Findings, "not laid out: <stdin>\n1 of 1 file not laid out\n", ""),
            await FormatInputAsync(Untidy, "--check", "-"));
    }

    [Fact]
    public async Task The_standard_input_stands_alone()
    {
        _disk.With("a.proc", Untidy);

        var run = await FormatInputAsync(Untidy, "-", "a.proc");

        Assert.Equal((ExitCode.Usage, ""), (run.Code, run.Output));
        Assert.Equal(Untidy, _disk.Read("a.proc"));
    }

    [Fact]
    public async Task What_a_link_leads_to_is_written_and_keeps_its_rights()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Links and rights are those of Unix.");
            return;
        }

        _disk.With("real/a.proc", Untidy);
        File.SetUnixFileMode(_disk["real/a.proc"], UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite);
        File.CreateSymbolicLink(_disk["link.proc"], _disk["real/a.proc"]);

        await FormatAsync("link.proc");

        Assert.NotNull(new FileInfo(_disk["link.proc"]).LinkTarget);
        Assert.Equal(Tidy, _disk.Read("real/a.proc"));
        Assert.Equal(
            UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite,
            File.GetUnixFileMode(_disk["real/a.proc"]));
    }

    [Fact]
    public async Task A_layout_changes_neither_the_findings_nor_the_packs()
    {
        var text = Sample.Text.Replace(" ", "   ", StringComparison.Ordinal);
        _disk.With("a.proc", text);
        await FormatAsync("a.proc");

        var formatted = _disk.Read("a.proc");
        Assert.NotEqual(text, formatted);
        Assert.Equal(Facts(text), Facts(formatted));
    }

    /// <summary>What a file comes to, but for its revision and the places in it.</summary>
    private static string Facts(string text)
    {
        var report = LibraryCheck.Run(MemorySourceStore.Of("a.proc", text));
        Assert.Empty(report.Findings);
        var plan = report.Procedures.Single().CreatePlan()!;
        return string.Join('\n', plan.Strip.Concat(plan.Refit).SelectMany(stage => stage.Steps)
            .Select(step => $"{step.Number} {step.Text} {step.Torque} {step.Where} {string.Join(',', step.Tools)} {step.Seconds}"));
    }

    private Task<CliRun> FormatAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, ["format", .. arguments]);

    private Task<CliRun> FormatInputAsync(string input, params string[] arguments) =>
        CliRun.AtAsync(_disk.Path, ["format", .. arguments], Encoding.UTF8.GetBytes(input));
}
