using System.CommandLine;
using ProcScript.Cli.Reports;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The options that say how a check tells what it found.</summary>
internal sealed class ReportOptions
{
    /// <summary>What the help says of them.</summary>
    public const string Note =
        """
        Formats: text for people; json, which report.schema.json describes; sarif (version 2.1.0); github, commands that
        annotate a pull request; gitlab, a code quality report; junit. Files are named relative to the repository's root in
        sarif, github, gitlab and junit, else relative to the library's. Without --time every format is the same for the
        same sources; a terminal is told the time anyway.
        """;

    private readonly Option<string> _format = new("--format")
    {
        Description = "How to tell it.",
        HelpName = string.Join('|', Names),
        DefaultValueFactory = _ => CheckFormat.Text,
    };

    private readonly Option<string?> _output = new("--output", "-o") { Description = "Write it to FILE, and only the last line to the output.", HelpName = "FILE" };

    private readonly Option<int?> _mostFindings = new("--max-findings") { Description = "Tell N findings at most, and how many more there are; the exit code stays.", HelpName = "N" };

    private readonly Option<bool> _all = new("--all") { Description = "Print every list in full, where a finding names the first few and counts the rest; other formats always do." };

    private readonly Option<bool> _quiet = new("--quiet") { Description = "Tell findings alone, and nothing where there are none." };

    private readonly Option<bool> _time = new("--time") { Description = "Tell how long it took." };

    /// <summary>Makes the options.</summary>
    public ReportOptions()
    {
        _format.AcceptOnlyFromAmong([.. Names]);
        _mostFindings.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: ['-', ..] }, ..])
            {
                result.AddError("--max-findings takes a number from 0 on.");
            }
        });
    }

    private static IEnumerable<string> Names => CheckFormat.All.Select(format => format.Name).Prepend(CheckFormat.Text);

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        foreach (var option in (IEnumerable<Option>)[_format, _output, _mostFindings, _all, _quiet, _time])
        {
            command.Add(option);
        }
    }

    /// <summary>The request with what was typed.</summary>
    public CheckRequest Read(ParseResult parsed, CheckRequest request) => request with
    {
        Format = CheckFormat.All.FirstOrDefault(format => format.Name == parsed.GetValue(_format)),
        Output = parsed.GetValue(_output),
        MostFindings = parsed.GetValue(_mostFindings),
        NamesAll = parsed.GetValue(_all),
        Quiet = parsed.GetValue(_quiet),
        Time = parsed.GetValue(_time),
    };
}
