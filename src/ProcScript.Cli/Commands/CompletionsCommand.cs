using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>completions</c>.</summary>
internal static class CompletionsCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        Argument<string> shell = new("SHELL") { Description = "The shell that reads the script.", HelpName = string.Join('|', CompletionScript.Shells) };
        shell.AcceptOnlyFromAmong([.. CompletionScript.Shells]);
        VerbCommand command = new("completions", "Prints a script that lets a shell complete verbs, options and names.")
        {
            Notes = ["The script asks this program what fits, so it needs no other tool and stays up to date."],
            Examples =
            [
                ("source <(procscript completions bash)", "In ~/.bashrc: complete in bash."),
                ("source <(procscript completions zsh)", "In ~/.zshrc, below compinit: complete in zsh."),
                ("procscript completions fish > ~/.config/fish/completions/procscript.fish", "Complete in fish."),
                ("procscript completions pwsh | Out-String | Invoke-Expression", "In the file that $PROFILE names: complete in PowerShell."),
            ],
        };
        command.Add(shell);
        command.SetAction(parsed =>
        {
            around.Output.Write(CompletionScript.For(parsed.GetRequiredValue(shell)));
            return (int)ExitCode.Clean;
        });
        return command;
    }
}
