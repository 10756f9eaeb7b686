using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>test</c>.</summary>
internal static class TestCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        WordingOption wording = new();
        TodayOption today = new();
        ColourOption colour = new();
        Option<bool> update = new("--update") { Description = "Write what is otherwise now into the files; look at the difference before you keep it." };
        VerbCommand command = new("test", "Holds a library to what it expects of its own packs and findings.")
        {
            Notes =
            [
                """
                A .expect file lies beside the sources. A line 'pack JOB', or with options 'pack JOB with a, b without c', begins what
                is expected of a pack, in every such variant; 'file PATH' what is expected of the check of one file:
                """,
                """
                  pack door_out-left with rail
                    strip undo hinge_bolts, remove door
                    refit fit door, fasten hinge_bolts
                    steps 14
                    time 20 .. 35 min
                  file tests/forgotten-plug.proc
                    PRC3001 at 12
                """,
                """
                Steps stand there in this order, with others between. Counted are steps, tools, bags, orders and people; 'not proven'
                expects that a job cannot be done. 'nothing' expects no finding. '//' starts a comment; after a comma at its end a
                line goes on. Under a pack or file with nothing below it, --update writes all that it is like now.
                """,
                "Exit codes: 0 all met, 1 something is otherwise, 2 wrong usage or unreadable input, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript test procedures", "Hold a library to what it expects."),
                ("procscript test procedures --update", "Take over how it is now."),
                ("procscript test procedures/ketterby-t40/cab.expect", "Hold the sources in one folder to one file."),
            ],
        };
        input.AddTo(command);
        command.Add(update);
        wording.AddTo(command);
        today.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await TestVerb.RunAsync(
            new TestRequest(input.Read(parsed), today.Read(parsed, wording.Read(parsed)), parsed.GetValue(update), colour.Read(parsed)),
            around,
            stop));
        return command;
    }
}
