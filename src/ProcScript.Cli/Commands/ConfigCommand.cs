using System.CommandLine;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>config</c>.</summary>
internal static class ConfigCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        WordingOption wording = new();
        ColourOption colour = new();
        Argument<string> path = new("PATH") { Description = "A .proc file, or a folder of the library." };
        Option<string?> root = new("--root") { Description = "The library's root folder.", HelpName = "DIR" };
        Option<string> format = new("--format")
        {
            Description = "How to print.",
            HelpName = "text|json",
            DefaultValueFactory = _ => "text",
        };
        format.AcceptOnlyFromAmong("text", "json");
        VerbCommand command = new("config", "Prints every setting and severity that holds for a path, and where each comes from.")
        {
            Notes =
            [
                """
                A library's settings stand in a procscript.json at its root; grammar/RULES.md tells all of them.
                What holds for a folder is what holds for a file in it that no override names by itself.
                """,
                "Exit codes: 0 clean, 1 errors in the settings, 2 wrong usage, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript config procedures", "What holds for a library."),
                ("procscript config procedures/ketterby-t40/cab.proc", "What holds for one file."),
                ("procscript config procedures --format json", "The same for another program."),
            ],
        };
        command.Add(path);
        command.Add(root);
        command.Add(format);
        wording.AddTo(command);
        colour.AddTo(command);
        command.SetAction(parsed => (int)ConfigVerb.Run(
            new ConfigRequest(
                new InputRequest([parsed.GetRequiredValue(path)], parsed.GetValue(root)),
                wording.Read(parsed),
                parsed.GetValue(format) == "json",
                colour.Read(parsed)),
            around));
        return command;
    }
}
