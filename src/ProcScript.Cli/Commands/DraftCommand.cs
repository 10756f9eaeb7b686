using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>draft</c>.</summary>
internal static class DraftCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new(orHere: true);
        ColourOption colour = new();
        Option<bool> diff = new("--diff") { Description = "Write nothing; show what would be written." };
        Option<string?> from = new("--from")
        {
            Description = "Begin with a plain list: notes, one step a line, or a list of parts as CSV (.csv).",
            HelpName = "FILE",
        };
        Option<string?> name = new("--name") { Description = "With --from: what the machine and its file are called; without it, as FILE.", HelpName = "NAME" };

        VerbCommand command = new("draft", "Declares what steps name and the machine lacks.")
        {
            Notes =
            [
                """
                Write the strip first: 'undo 4 m10x30 seat_bolts', 'unplug lamp_plug', 'remove seat'. The draft writes the
                parts, joints, energies, fluids, controls, kinds and tools that these steps name. What was only guessed
                stands in a comment as a question, '// draft: is the mat behind the seat?'. As long as one is open, a
                rule tells it, and every card says DRAFT.
                """,
                """
                --from reads a plain list and writes NAME.proc into the current folder. Of notes, one step a line, it makes
                machine and procedure; a line that it does not understand becomes a task with a question. Of a list of
                parts it makes the machine.
                """,
                "Files whose text has errors are left alone. The text of - goes to the output.",
                "Exit codes: 0 drafted, or nothing to draft, 1 something not drafted, or with --diff something to write, 2 wrong usage, unreadable or unwritable file, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript draft fan.proc --diff", "Show what the steps of a file lack."),
                ("procscript draft", "Declare it, in all files of the current folder."),
                ("procscript draft --from notes.txt", "Write notes.proc from a list of steps in plain words."),
                ("procscript draft --from parts.csv --name fan_f4", "Write fan_f4.proc from a list of parts."),
            ],
        };
        input.AddTo(command);
        foreach (var option in (IEnumerable<Option>)[diff, from, name])
        {
            command.Add(option);
        }

        colour.AddTo(command);
        command.Validators.Add(result =>
        {
            if (result.GetResult(from) is null && result.GetResult(name) is not null)
            {
                result.AddError("--name goes with --from; a library's own files keep their names.");
            }
        });
        command.SetAction(async (parsed, stop) =>
        {
            if (parsed.GetValue(from) is not { } list)
            {
                return (int)await DraftVerb.RunAsync(new DraftVerbRequest(input.Read(parsed), new SettingsRequest(null), parsed.GetValue(diff), colour.Read(parsed)), around, stop);
            }

            if (input.AreTyped(parsed))
            {
                throw new UsageException("--from makes a file of its own: leave PATH away, or --from.");
            }

            return (int)await DraftFromVerb.RunAsync(new DraftFromRequest(list, parsed.GetValue(name), parsed.GetValue(diff), colour.Read(parsed)), around, stop);
        });
        return command;
    }
}
