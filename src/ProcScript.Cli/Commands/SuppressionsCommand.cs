using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>suppressions</c>.</summary>
internal static class SuppressionsCommand
{
    private const string Text = "text";
    private const string Json = "json";

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new(orHere: true);
        WordingOption wording = new();
        TodayOption today = new();
        ColourOption colour = new();
        Option<string> format = new("--format") { Description = "How to list them.", HelpName = $"{Text}|{Json}", DefaultValueFactory = _ => Text };
        format.AcceptOnlyFromAmong(Text, Json);
        VerbCommand command = new("suppressions", "Lists the comments that allow findings: where, which rule, why, until when, and whether they are needed.")
        {
            Notes =
            [
                InputArguments.Note,
                "Exit codes: 0 listed, 2 wrong usage or unreadable input, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript suppressions procedures", "List what a library allows."),
                ("procscript suppressions procedures --today 2027-03-01", "See what will have run out by then."),
                ("procscript suppressions procedures --format json", "List it for a program; suppressions.schema.json describes it."),
            ],
        };
        input.AddTo(command);
        command.Add(format);
        wording.AddTo(command);
        today.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await SuppressionsVerb.RunAsync(
            new SuppressionsRequest(input.Read(parsed), today.Read(parsed, wording.Read(parsed)), parsed.GetValue(format) == Json, colour.Read(parsed)),
            around,
            stop));
        return command;
    }
}
