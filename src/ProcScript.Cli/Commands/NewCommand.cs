using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>new</c>.</summary>
internal static class NewCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        VerbCommand command = new("new", "Writes a commented file to start from.")
        {
            Notes =
            [
                """
                In a folder that is in no library yet, procscript.json is written beside it: the settings that a shop chooses first, each
                with what it means. Nothing is ever written over.
                """,
            ],
            Examples =
            [
                ("procscript new machine \"Harrow H2\"", "Write harrow_h2.proc with a machine to fill."),
                ("procscript new procedure change_belt", "Write change_belt.proc with a procedure and a small machine for it."),
                ("procscript new procedure change_belt --use harrow_h2.proc", "Write a procedure on a machine that you have."),
            ],
        };
        command.Add(Machine(around));
        command.Add(Procedure(around));
        return command;
    }

    private static VerbCommand Machine(Surroundings around)
    {
        var name = Name();
        VerbCommand command = new("machine", "Writes NAME.proc with a machine to fill.")
        {
            Examples = [("procscript new machine harrow_h2", "Write harrow_h2.proc with a machine to fill."), ("procscript new machine \"Harrow H2\"", "The same, with that title.")],
        };
        command.Add(name);
        command.SetAction(async (parsed, stop) =>
            (int)await NewVerb.RunAsync(new NewRequest(StartKind.Machine, parsed.GetRequiredValue(name), Use: null, Machine: null), around, stop));
        return command;
    }

    private static VerbCommand Procedure(Surroundings around)
    {
        var name = Name();
        Option<string?> use = new("--use") { Description = "The file that declares the machine.", HelpName = "FILE" };
        Option<string?> on = new("--on") { Description = "The machine, where FILE declares several.", HelpName = "MACHINE" };
        VerbCommand command = new("procedure", "Writes NAME.proc with a small procedure.")
        {
            Examples =
            [
                ("procscript new procedure change_belt", "Write change_belt.proc with a procedure and a small machine for it."),
                ("procscript new procedure change_belt --use harrow_h2.proc", "Write a procedure on a machine that you have."),
            ],
        };
        command.Add(name);
        command.Add(use);
        command.Add(on);
        command.SetAction(async (parsed, stop) => (int)await NewVerb.RunAsync(
            new NewRequest(StartKind.Procedure, parsed.GetRequiredValue(name), parsed.GetValue(use), parsed.GetValue(on)), around, stop));
        return command;
    }

    private static Argument<string> Name() => new("NAME") { Description = "A name of letters, digits and underscores, as it stands in the file; or a title, of which a name is made." };
}
