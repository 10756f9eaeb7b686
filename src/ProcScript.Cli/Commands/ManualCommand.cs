using System.CommandLine;
using ProcScript.Cli.Manual;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>manual</c>: it has none.</summary>
internal static class ManualCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        VerbCommand command = new("manual", "Prints the manual page, for the program 'man' to show.")
        {
            Examples =
            [
                ("procscript manual | man -l -", "Read it."),
                ("procscript manual > ~/.local/share/man/man1/procscript.1", "Keep it where 'man procscript' finds it."),
            ],
        };
        command.SetAction(parsed =>
        {
            around.Output.Write(ManualPage.Of((RootCommand)parsed.RootCommandResult.Command));
            return (int)ExitCode.Clean;
        });
        return command;
    }
}
