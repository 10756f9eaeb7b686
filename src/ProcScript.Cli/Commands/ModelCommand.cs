using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>model</c>.</summary>
internal static class ModelCommand
{
    private const string Json = "json";

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        ColourOption colour = new();
        Option<string> format = new("--format") { Description = "How to write them.", HelpName = Json, DefaultValueFactory = _ => Json };
        format.AcceptOnlyFromAmong(Json);
        Option<string?> machine = new("--machine") { Description = "This machine only.", HelpName = "NAME" };
        Option<string[]> with = new("--with") { Description = "Only the variant that has this option; may be given several times.", HelpName = "OPTION" };
        Option<string?> output = new("--output", "-o") { Description = "Write it to FILE.", HelpName = "FILE" };
        new LibraryNames(input.Read, around).Complete(machine, LibraryNames.Machines);
        VerbCommand command = new("model", "Writes machines as data, for a program that checks a plan.json by itself.")
        {
            Notes =
            [
                InputArguments.Note,
                """
                One document has every machine in every variant that a procedure or the check of the machine needs; plan.json names
                its machine and says which options that has. model.schema.json describes the document. Nothing is written
                where the text of a machine that is asked for has errors.
                """,
                "Exit codes: 0 written, 1 errors, 2 wrong usage, unreadable input or unwritable output, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript model procedures --format json -o model.json", "Write every machine of a library."),
                ("procscript model procedures --machine ketterby_t40_cab --with air_seat", "Write one variant of one machine."),
            ],
        };
        input.AddTo(command);
        foreach (var option in (IEnumerable<Option>)[format, machine, with, output])
        {
            command.Add(option);
        }

        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await ModelVerb.RunAsync(
            new ModelRequest(
                input.Read(parsed),
                parsed.GetValue(machine),
                parsed.GetValue(with) is { Length: > 0 } options ? [.. options.Distinct(StringComparer.Ordinal)] : null,
                parsed.GetValue(output),
                colour.Read(parsed)),
            around,
            stop));
        return command;
    }
}
