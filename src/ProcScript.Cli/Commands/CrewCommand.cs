using System.CommandLine;
using ProcScript.Analysis.Crews;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>crew</c>.</summary>
internal static class CrewCommand
{
    private const string Text = "text";
    private const string Json = "json";
    private const int Usual = 2;

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        WordingOption wording = new();
        ColourOption colour = new();
        CrewOptions crew = new(Usual);
        Option<string?> procedure = new("--procedure") { Description = "This procedure only.", HelpName = "NAME" };
        Option<string[]> with = new("--with") { Description = "An option that the machine has; may be given several times.", HelpName = "OPTION" };
        Option<string> format = new("--format") { Description = "How to tell it.", HelpName = $"{Text}|{Json}", DefaultValueFactory = _ => Text };
        format.AcceptOnlyFromAmong(Text, Json);
        Option<string?> output = new("--output", "-o") { Description = "Write it to FILE.", HelpName = "FILE" };

        VerbCommand command = new("crew", "Says who does what when, and what another person saves.")
        {
            Notes =
            [
                InputArguments.Note,
                """
                What the proof needs to come first comes first. Beyond that, nothing starts before an energy is made safe that
                the cards have behind it; all stand clear where one comes back or is live, of a load on a hoist, and of what can
                fire, fall, fly off or burst; steps written as a text keep their place. Who is alone works in the order of the cards.
                """,
                """
                Times are those of the plan. An order holds however quick or slow somebody is: it says which steps of others to wait
                for. 'procscript build --people N' prints it on the cards. --exact proves that no order is quicker, or says how much
                quicker one might be.
                """,
                "Exit codes: 0 told, 1 errors or a procedure that is not proven, 2 wrong usage or unreadable input, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript crew procedures --procedure headliner_out", "See what a second person saves, and how."),
                ("procscript crew procedures --people 3 --exact", "Of every job, for three, proved to be the quickest."),
                ("procscript crew procedures --format json -o crew.json", "For a program; crew.schema.json describes it."),
            ],
        };
        input.AddTo(command);
        command.Add(procedure);
        command.Add(with);
        LibraryNames names = new(input.Read, around);
        names.Complete(procedure, LibraryNames.Procedures);
        crew.AddTo(command, names);
        command.Add(format);
        command.Add(output);
        wording.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await CrewVerb.RunAsync(
            new CrewRequest(
                input.Read(parsed),
                wording.Read(parsed),
                parsed.GetValue(procedure),
                [.. (parsed.GetValue(with) ?? []).Distinct(StringComparer.Ordinal)],
                crew.Size(parsed) ?? new CrewSize(Usual),
                crew.IsExact(parsed),
                crew.Seconds(parsed),
                parsed.GetValue(format) == Json,
                parsed.GetValue(output),
                colour.Read(parsed)),
            around,
            stop));
        return command;
    }
}
