using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>format</c>.</summary>
internal static class FormatCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        ColourOption colour = new();
        Option<bool> check = new("--check") { Description = "Write nothing; name the files that are laid out otherwise." };
        Option<bool> diff = new("--diff") { Description = "Write nothing; show what would change." };

        VerbCommand command = new("format", "Lays files out. Every word and every comment stays; only blanks and line breaks change.")
        {
            Notes =
            [
                """
                Lines are 120 columns wide. What stands on one line stays on one while it fits; one blank line stays
                where there were any. Files whose text has errors are left alone. The text of - goes to the output.
                """,
                "Exit codes: 0 clean, 1 files left alone or, with --check or --diff, laid out otherwise, 2 wrong usage or unwritable file, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript format procedures", "Lay out a whole library."),
                ("procscript format --check procedures", "Fail where a file is laid out otherwise, as a build server may want."),
                ("procscript format --diff procedures/ketterby-t40/cab.proc", "Show what would change."),
                ("procscript format - < draft.proc", "Lay out what an editor writes."),
            ],
        };
        input.AddTo(command);
        command.Add(check);
        command.Add(diff);
        colour.AddTo(command);
        command.SetAction((parsed, stop) => Task.FromResult((int)FormatVerb.Run(
            new FormatRequest(
                input.Read(parsed),
                parsed.GetValue(diff) ? FormatMode.Diff : parsed.GetValue(check) ? FormatMode.Check : FormatMode.Write,
                colour.Read(parsed)),
            around,
            stop)));
        return command;
    }
}
