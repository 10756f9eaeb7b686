using System.Diagnostics;

namespace ProcScript.Cli.Tests.Packaging;

/// <summary>The completion scripts in the shells that they are for. A shell that is not installed is skipped, and said to be.</summary>
[Slow]
public sealed class CompletionTests : IDisposable
{
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(60);

    private readonly TemporaryFolder _disk = new();

    public CompletionTests()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The shells are started as on Linux.");
        _disk.With("bin/procscript", $"#!/bin/sh\nexec dotnet '{Path.Combine(AppContext.BaseDirectory, "procscript.dll")}' \"$@\"\n").With("pump.proc", "");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(_disk["bin/procscript"], UnixFileMode.UserRead | UnixFileMode.UserExecute | UnixFileMode.UserWrite);
        }
    }

    public void Dispose() => _disk.Dispose();

    /// <summary>A shell takes its time to start, and one completes all that is typed into it.</summary>
    [Fact]
    public async Task Bash_completes()
    {
        (string Typed, string Completed)[] lines =
        [
            ("chec", "check "), ("check --fail-on warn", "check --fail-on warning "), ("check --fa", "check --fail-on "),
            ("explain removed-w", "explain removed-while-held "), ("new mach", "new machine "), ("check pum", "check pump.proc "),
            ("toge", "together "), ("crew --cert", "crew --certified "), ("map --format merm", "map --format mermaid "), ("reach --wri", "reach --write "),
        ];

        // A bash that believes it sits at a terminal, and a person who presses Tab, then asks what the line has become.
        var output = await RunAsync(
            "script", ["-qec", "bash --noprofile --norc -i", "/dev/null"],
            "show() { printf '<%s>\\n' \"$READLINE_LINE\"; READLINE_LINE=; }; bind -x '\"\\C-x\\C-p\": show'\n"
                + "source <(procscript completions bash)\n"
                + string.Concat(lines.Select(line => $"procscript {line.Typed}\t\u0018\u0010"))
                + "exit\n");

        Assert.All(lines, line => Assert.Contains($"<procscript {line.Completed}>", output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Fish_completes()
    {
        (string Typed, string[] Completed)[] lines =
        [
            ("chec", ["check"]), ("check --fail-on ", ["error", "hint", "never", "warning"]), ("explain removed-w", ["removed-while-held"]),
            ("check pum", ["pump.proc"]), ("re", ["reach"]), ("bac", ["back"]), ("crew --format ", ["json", "text"]),
            ("map --format ", ["dot", "html", "mermaid", "svg"]),
        ];

        var output = await RunAsync(
            "fish",
            ["--no-config", "-c", $"procscript completions fish | source; {string.Join("; ", lines.Select(line => $"complete -C 'procscript {line.Typed}'; echo"))}"],
            "");

        Assert.Equal(
            lines.Select(line => string.Join(' ', line.Completed)),
            output.TrimEnd('\n').Split("\n\n").Select(found => string.Join(' ', found.Split('\n').Select(line => line.Split('\t')[0]))));
    }

    [Fact]
    public async Task Zsh_completes()
    {
        (string Typed, string Completed)[] lines =
        [
            ("chec", "check "), ("check --fail-on warn", "check --fail-on warning "), ("explain removed-w", "explain removed-while-held "),
            ("check pum", "check pump.proc "), ("wh", "why "), ("back --aft", "back --after "), ("crew --exa", "crew --exact "),
        ];

        // zsh's own pseudo-terminal holds the zsh that completes.
        var output = await RunAsync("zsh", ["-f", "-c", $$"""
            zmodload zsh/zpty
            zpty inner zsh -f -i
            zpty -w inner 'PS1=; autoload -Uz compinit; compinit -u -D; source <(procscript completions zsh); unsetopt beep'
            zpty -w inner 'show() { print -r -- "<$BUFFER>"; zle kill-whole-line }; zle -N show; bindkey "^X" show; print ready'
            zpty -r inner line '*ready*ready*'
            for typed in {{string.Join(' ', lines.Select(line => $"'{line.Typed}'"))}}; do
              zpty -w -n inner "procscript $typed"$'\t\x18'
              zpty -r inner line '*<*>*'
              print -r -- "$line"
            done
            zpty -d inner
            """], "");

        Assert.All(lines, line => Assert.Contains($"<procscript {line.Completed}>", output, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("pwsh")]
    public async Task Every_shell_has_a_script_that_asks_the_program(string shell)
    {
        var run = await CliRun.AtAsync(_disk.Path, "completions", shell);

        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.Contains("[suggest:", run.Output, StringComparison.Ordinal);
        Assert.Contains($"procscript completions {shell}", run.Output, StringComparison.Ordinal);
    }

    private async Task<string> RunAsync(string program, string[] arguments, string input)
    {
        var found = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, program)));
        Assert.SkipUnless(found, $"{program} is not installed.");
        ProcessStartInfo start = new(program, arguments)
        {
            WorkingDirectory = _disk.Path,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = $"{Path.Combine(_disk.Path, "bin")}:{start.Environment["PATH"]}";
        start.Environment["HOME"] = _disk.Path;
        start.Environment["TERM"] = "dumb";
        // Whatever started the tests: a shell that does not read names as UTF-8 finds no program in this folder.
        start.Environment["LC_ALL"] = "C.UTF-8";
        using var process = Process.Start(start)!;
        await process.StandardInput.WriteAsync(input);
        await process.StandardInput.FlushAsync(TestContext.Current.CancellationToken);
        using var hang = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        hang.CancelAfter(Hang);
        try
        {
            return await process.StandardOutput.ReadToEndAsync(hang.Token);
        }
        finally
        {
            process.Kill(entireProcessTree: true);
        }
    }
}
