using ProcScript.Analysis;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class CommandLineTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task The_version_is_told_and_the_commit_that_was_built()
    {
        var run = await CliRun.AtAsync(_disk.Path, "--version");

        Assert.Equal(ExitCode.Clean, run.Code);
        // Sources that came without their history have no commit.
        var commit = Path.Exists(Path.Combine(Checkout.Root, ".git")) ? " \\(commit [0-9a-f]{12}\\)" : "";
        Assert.Matches($"^procscript [0-9]+\\.[0-9]+\\.[0-9]+{commit}\n$", run.Output);
        Assert.Equal("", run.Error);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("baseline")]
    [InlineData("baseline write")]
    [InlineData("suppressions")]
    [InlineData("test")]
    [InlineData("audit")]
    [InlineData("crew")]
    [InlineData("learn")]
    [InlineData("draft")]
    [InlineData("build")]
    [InlineData("explain")]
    [InlineData("new")]
    [InlineData("new machine")]
    [InlineData("manual")]
    [InlineData("new procedure")]
    public async Task The_help_of_every_verb_has_examples_of_it(string verb)
    {
        var run = await CliRun.AtAsync(_disk.Path, [.. verb.Split(' '), "--help"]);

        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.Contains($"\nExamples:\n  procscript {verb} ", run.Output, StringComparison.Ordinal);
        Assert.Equal("", run.Error);
    }

    [Fact]
    public async Task The_help_of_the_program_names_its_verbs()
    {
        var run = await CliRun.AtAsync(_disk.Path, "--help");

        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.All(new[] { "check", "baseline", "suppressions", "build", "explain", "new" }, verb => Assert.Contains($"\n  {verb} ", run.Output, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "procscript: a command is missing; there are: check, baseline, suppressions, test, audit, build, crew, job, learn, model, reach, back, together, why, map, format, fix, diff, explain, config, texts, new, draft, server, completions, manual.\nSee 'procscript --help'.\n")]
    [InlineData("chek x", "procscript: there is no command 'chek'; there are: check, baseline, suppressions, test, audit, build, crew, job, learn, model, reach, back, together, why, map, format, fix, diff, explain, config, texts, new, draft, server, completions, manual.\nSee 'procscript --help'.\n")]
    [InlineData("new", "procscript: a command is missing; there are: machine, procedure.\nSee 'procscript new --help'.\n")]
    [InlineData("new machine", "procscript: Required argument 'NAME' missing for command: 'machine'.\nSee 'procscript new machine --help'.\n")]
    [InlineData("check", "procscript: Required argument 'PATH' missing for command: 'check'.\nSee 'procscript check --help'.\n")]
    [InlineData("check --strict", "procscript: There is no option '--strict'.\nSee 'procscript check --help'.\n")]
    [InlineData("why lid --dept 3", "procscript: There is no option '--dept'.\nSee 'procscript why --help'.\n")]
    [InlineData("back p --aftr 3", "procscript: There is no option '--aftr'; did you mean '--after'?\nSee 'procscript back --help'.\n")]
    [InlineData("reach lid --mashine m", "procscript: There is no option '--mashine'; did you mean '--machine'?\nSee 'procscript reach --help'.\n")]
    [InlineData("check -- --strict", "procscript: there is no file or folder '--strict'.\n")]
    [InlineData("check @file", "procscript: there is no file or folder '@file'.\n")]
    [InlineData("check . --today soon", "procscript: 'soon' is no day: write year, month and day, such as 2027-03-01.\nSee 'procscript check --help'.\n")]
    [InlineData("check . --max-findings -1", "procscript: --max-findings takes a number from 0 on.\nSee 'procscript check --help'.\n")]
    [InlineData("baseline write .", "procscript: Option '--output' is required.\nSee 'procscript baseline write --help'.\n")]
    [InlineData("build .", "procscript: Option '--output' is required.\nSee 'procscript build --help'.\n")]
    [InlineData("build . -o x --format pdf", "procscript: 'pdf' is no format: choose among html, md, json.\nSee 'procscript build --help'.\n")]
    public async Task A_wrong_call_is_said_on_the_error_stream(string arguments, string message)
    {
        var run = await CliRun.AtAsync(_disk.Path, arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal("", run.Output);
        Assert.Equal(message, run.Error);
    }

    /// <summary>What is told of a job, or read at it, may begin with a dash.</summary>
    [Theory]
    [InlineData("reading", "1", "-0.9 bar")]
    [InlineData("reading", "1", "-0.9")]
    [InlineData("note", "-left side scratched")]
    public async Task A_sentence_and_a_figure_below_zero_are_no_options(params string[] told)
    {
        var run = await CliRun.AtAsync(_disk.Path, ["job", told[0], "no-job", .. told[1..], "--by", "Mara"]);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.DoesNotContain("option", run.Error, StringComparison.Ordinal);
        Assert.Contains("no-job", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_severity_that_is_none_is_a_wrong_call()
    {
        var run = await CliRun.AtAsync(_disk.Path, "check", ".", "--fail-on", "everything");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("everything", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_of_ours_asks_for_a_report_and_shows_no_stack()
    {
        _disk.With("a.proc", "");

        var run = await CliRun.AtAsync(_disk.Path, ["check", "-", "my file"], input: null, Faulty(stack: null));

        Assert.Equal(ExitCode.Bug, run.Code);
        Assert.StartsWith("procscript: internal error: InvalidOperationException: made to fail\n", run.Error, StringComparison.Ordinal);
        Assert.Contains("Please report it", run.Error, StringComparison.Ordinal);
        Assert.Contains("\n  command: procscript check - 'my file'\n", run.Error, StringComparison.Ordinal);
        Assert.Contains("\n  version: ", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_stack_is_shown_to_those_who_ask()
    {
        var run = await CliRun.AtAsync(_disk.Path, ["check", "-"], input: null, Faulty(stack: "1"));

        Assert.Equal(ExitCode.Bug, run.Code);
        Assert.Contains("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_output_that_cannot_be_written_is_said()
    {
        var run = await CliRun.AtAsync(_disk.Path, ["--version"], input: null, around => around with { Output = new FullDisk() });

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal("procscript: cannot write the output: no space left\n", run.Error);
    }

    [Fact]
    public async Task A_stop_before_the_end_is_an_interruption()
    {
        using CancellationTokenSource stop = new();
        await stop.CancelAsync();

        var run = await CliRun.AtAsync(_disk.Path, ["check", "-"], input: [], stop: stop.Token);

        Assert.Equal(ExitCode.Interrupted, run.Code);
        Assert.Equal("", run.Output + run.Error);
    }

    [Fact]
    public async Task Every_rule_is_listed_and_explained_by_code_and_by_name()
    {
        var list = await CliRun.AtAsync(_disk.Path, "explain");

        Assert.Equal(ExitCode.Clean, list.Code);
        foreach (var rule in RuleCatalog.All)
        {
            var byCode = await CliRun.AtAsync(_disk.Path, "explain", rule.Info.Code.ToLowerInvariant());
            var byName = await CliRun.AtAsync(_disk.Path, "explain", rule.Info.Name);

            Assert.Contains($"{rule.Info.Code}  {rule.Info.Name} ", list.Output, StringComparison.Ordinal);
            Assert.StartsWith($"{rule.Info.Code} {rule.Info.Name}: {rule.Info.Title}\n", byCode.Output, StringComparison.Ordinal);
            Assert.Equal(byCode, byName);
            Assert.All(new[] { "What", "Why", "Wrong", "Right" }, part => Assert.Contains($"\n\n{part}\n  ", byCode.Output, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_rule_that_is_none_is_said()
    {
        var run = await CliRun.AtAsync(_disk.Path, "explain", "PRC0000");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal("procscript: there is no rule 'PRC0000'; 'procscript explain' lists all.\n", run.Error);
    }

    private Func<Surroundings, Surroundings> Faulty(string? stack)
    {
        _disk.With("my file", "");
        return around => around with
        {
            OpenInput = () => throw new InvalidOperationException("made to fail"),
            Variable = name => name == "PROCSCRIPT_STACK" ? stack : null,
        };
    }

    private sealed class FullDisk : StringWriter
    {
        public override Task FlushAsync(CancellationToken cancellationToken) => throw new IOException("no space left");
    }
}
