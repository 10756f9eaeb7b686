using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>server</c>.</summary>
internal static class ServerCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        VerbCommand command = new("server", "Serves an editor over the standard input and output, by the Language Server Protocol.")
        {
            Notes =
            [
                "An editor starts it; it is of no use at a terminal. It checks what is open as 'check' would.",
                "Exit codes: 0 the editor took its leave, 1 it left without, 3 a fault of procscript.",
            ],
            Examples = [("procscript server", "What an editor's configuration names as the command.")],
        };
        // Editors that start servers in several ways say which one they mean.
        command.Add(new Option<bool>("--stdio") { Description = "Use the standard input and output, as it does anyway." });
        command.SetAction(async (_, stop) => (int)await ServerVerb.RunAsync(around, stop));
        return command;
    }
}
