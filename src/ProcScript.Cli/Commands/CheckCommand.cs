using System.CommandLine;
using ProcScript.Cli.Verbs;
using ProcScript.Cli.Watching;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>check</c>.</summary>
internal static class CheckCommand
{
    /// <summary>The severities, and a word for none of them.</summary>
    private static readonly string[] FailWords = [.. SeverityWords.All, "never"];

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        WordingOption wording = new();
        TodayOption today = new();
        ReportOptions report = new();
        ColourOption colour = new();
        CacheOptions cache = new();
        Option<string> failOn = new("--fail-on")
        {
            Description = "The least severity that makes the exit code 1.",
            HelpName = string.Join('|', FailWords),
            DefaultValueFactory = _ => SeverityWords.Of(Severity.Error),
        };
        failOn.AcceptOnlyFromAmong(FailWords);
        Option<string?> baseline = new("--baseline") { Description = "Be silent on the findings in FILE, which 'baseline write' wrote.", HelpName = "FILE" };

        Option<string?> since = new("--since")
        {
            Description = "Check only the files changed since a Git revision, and everything that uses them.",
            HelpName = "REVISION",
        };
        Option<bool> watch = new("--watch") { Description = "Check again whenever a file changes, until Ctrl-C." };

        VerbCommand command = new("check", "Proves that each procedure can be done as written and that its refit puts the machine back.")
        {
            Notes =
            [
                InputArguments.Note,
                """
                With --since, a file counts as changed that differs from the revision, committed or not, and one that Git does
                not keep. The users of a file that is gone are checked. All PATHs are read, so that names are understood;
                what no change has touched is not proven. Changed settings have everything checked.
                """,
                ReportOptions.Note,
                CacheOptions.Note,
                "Exit codes: 0 clean, 1 findings, 2 wrong usage or unreadable input, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript check procedures", "Check a whole library."),
                ("procscript check procedures/ketterby-t40/cab.proc", "Check one file and what it uses."),
                ("procscript check procedures --fail-on warning", "Fail on warnings too, as a build server may want."),
                ("procscript check procedures --since main", "Check what has changed since main, and what uses it."),
                ("procscript check procedures --format sarif -o findings.sarif", "Write the findings for a service that shows them beside the sources."),
                ("procscript check procedures --baseline baseline.json", "Tell only what is not known yet."),
                ("procscript check procedures --watch", "Check again at every save."),
                ("procscript check - < draft.proc", "Check what another program writes."),
            ],
        };
        input.AddTo(command);
        command.Add(since);
        command.Add(watch);
        command.Add(failOn);
        report.AddTo(command);
        command.Add(baseline);
        wording.AddTo(command);
        today.AddTo(command);
        colour.AddTo(command);
        cache.AddTo(command);
        command.SetAction(async (parsed, stop) =>
        {
            CheckRequest request = new(input.Read(parsed), today.Read(parsed, wording.Read(parsed)), parsed.GetValue(since), SeverityWords.Read(parsed.GetRequiredValue(failOn)), colour.Read(parsed))
            {
                Baseline = parsed.GetValue(baseline),
                Cache = cache.Read(parsed),
            };
            var full = report.Read(parsed, request);
            return (int)(parsed.GetValue(watch)
                ? await WatchLoop.RunAsync(full.Input, other: null, () => CheckVerb.RunAsync(full, around, stop), around, stop)
                : await CheckVerb.RunAsync(full, around, stop));
        });
        return command;
    }
}
