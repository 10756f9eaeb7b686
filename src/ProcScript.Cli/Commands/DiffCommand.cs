using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>diff</c>.</summary>
internal static class DiffCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        WordingOption wording = new();
        ColourOption colour = new();
        Argument<string> old = new("OLD") { Description = "The old state: a file, a folder, REVISION or REVISION:PATH." };
        Argument<string> fresh = new("NEW") { Description = "The new state, likewise." };
        Option<string?> root = new("--root") { Description = "The library's root folder.", HelpName = "DIR" };
        Option<string> format = new("--format")
        {
            Description = "The form of the answer: for a terminal, for a comment in a review, for a program.",
            HelpName = "text|markdown|json",
            DefaultValueFactory = _ => "text",
        };
        format.AcceptOnlyFromAmong("text", "markdown", "json");

        VerbCommand command = new("diff", "Says in shop words what the work packs of one state of a library say otherwise than those of another.")
        {
            Notes =
            [
                """
                Told are steps added, dropped, moved and changed (torques, counts, new parts and all else a card says), tools,
                order list and other lists, times, alerts, and which printed pages and bag labels are void. Jobs are compared
                that are proven in both states; '!' marks what needs a look.
                """,
                """
                What is there on the disk is meant before a revision of that name. PATH starts from where you stand. A revision
                alone means what the other argument names, as it was then. Git is read, and nothing is checked out.
                """,
                "Exit codes: 0 no alert is lost, 1 an alert is gone or weaker, or a job no longer proven, 2 wrong usage or unreadable input, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript diff main procedures", "What your working copy says otherwise than main."),
                ("procscript diff v1.2:procedures v1.3:procedures --format markdown", "What a release changes, for a review."),
                ("procscript diff old/seat.proc new/seat.proc", "Compare two files."),
            ],
        };
        command.Add(old);
        command.Add(fresh);
        command.Add(root);
        command.Add(format);
        wording.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await DiffVerb.RunAsync(
            new DiffRequest(
                parsed.GetRequiredValue(old),
                parsed.GetRequiredValue(fresh),
                parsed.GetValue(root),
                wording.Read(parsed),
                parsed.GetValue(format) switch { "json" => DiffFormat.Json, "markdown" => DiffFormat.Markdown, _ => DiffFormat.Text },
                colour.Read(parsed)),
            around,
            stop));
        return command;
    }
}
