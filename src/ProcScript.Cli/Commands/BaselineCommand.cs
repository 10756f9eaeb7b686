using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>baseline</c>.</summary>
internal static class BaselineCommand
{
    private static readonly (string Line, string Meaning)[] Uses =
    [
        ("procscript baseline write procedures -o baseline.json", "Write down what a library has of findings today."),
        ("procscript check procedures --baseline baseline.json", "Tell only what is not written down."),
        ("procscript baseline write procedures -o baseline.json", "Later, take out what is fixed. Nothing comes in."),
    ];

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        VerbCommand command = new("baseline", "Keeps the findings that a library had, so that a check tells only new ones.") { Examples = [.. Uses] };
        command.Add(Write(around));
        return command;
    }

    private static VerbCommand Write(Surroundings around)
    {
        InputArguments input = new(orHere: true);
        WordingOption wording = new();
        TodayOption today = new();
        Option<string> output = new("--output", "-o") { Description = "The file to write.", HelpName = "FILE", Required = true };
        Option<bool> acceptNew = new("--accept-new") { Description = "Take in findings that the file, which is there already, does not list." };
        VerbCommand command = new("write", "Writes down what a library has of findings. A file that is there already only shrinks.")
        {
            Notes =
            [
                InputArguments.Note,
                """
                A finding is known again by its rule, its file and the words of its line, so that it may move within the file.
                Findings in files that are not named stay in the file as they are.
                An error is never written down, and never silenced: what is not proven has to be mended.
                """,
                "Exit codes: 0 written, 1 written without new findings or errors, 2 wrong usage, unreadable input or unwritable file, 3 a fault of procscript.",
            ],
            Examples = [.. Uses],
        };
        input.AddTo(command);
        command.Add(output);
        command.Add(acceptNew);
        wording.AddTo(command);
        today.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await BaselineVerb.WriteAsync(
            new BaselineRequest(
                input.Read(parsed), today.Read(parsed, wording.Read(parsed)), parsed.GetRequiredValue(output), parsed.GetValue(acceptNew)),
            around,
            stop));
        return command;
    }
}
