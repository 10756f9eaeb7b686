using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>audit</c>.</summary>
internal static class AuditCommand
{
    private const string Text = "text";
    private const string Json = "json";

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        WordingOption wording = new();
        TodayOption today = new();
        ColourOption colour = new();
        Option<string> format = new("--format") { Description = "How to list them.", HelpName = $"{Text}|{Json}", DefaultValueFactory = _ => Text };
        format.AcceptOnlyFromAmong(Text, Json);
        Option<int?> most = new("--at-most") { Description = "Fail where nothing notices more than N of the mistakes.", HelpName = "N" };
        most.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int?>() < 0)
            {
                result.AddError("--at-most takes a number from 0 up.");
            }
        });
        Option<string?> output = new("--output", "-o") { Description = "Write it to FILE.", HelpName = "FILE" };

        VerbCommand command = new("audit", "Makes one mistake at a time in a library, and lists those that no check would notice.")
        {
            Notes =
            [
                InputArguments.Note,
                """
                A step is left out of a procedure; an item is named at another place (left for right); of a machine one 'behind',
                'needs', 'on', 'carries', 'to', 'after', 'renew with' or 'temporary' is left out. Your files stay as they are.
                Noticed is what brings a finding, or is not as an .expect file says (see 'procscript test').
                """,
                """
                What nothing notices is no fault yet: it says where you are on your own, and why. Where a pack changes without a
                word, an .expect file can hold it. What no step of a job asks for waits for the job that does. Where another step
                asks for the same, that is named. Texts, figures and the rules of a refit block are not tried, for nobody but the
                author knows what they should be.
                """,
                "Exit codes: 0 listed, 1 the library has errors or more go unnoticed than --at-most allows, 2 wrong usage or unreadable input, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript audit procedures", "See what the checks of a library would let through."),
                ("procscript audit procedures/ketterby-t40 --format json -o audit.json", "Of one machine, for a program; audit.schema.json describes it."),
                ("procscript audit procedures --at-most 40", "Fail on a build server once there are more."),
            ],
        };
        input.AddTo(command);
        command.Add(format);
        command.Add(most);
        command.Add(output);
        wording.AddTo(command);
        today.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await AuditVerb.RunAsync(
            new AuditRequest(
                input.Read(parsed),
                today.Read(parsed, wording.Read(parsed)),
                parsed.GetValue(format) == Json,
                parsed.GetValue(most),
                parsed.GetValue(output),
                colour.Read(parsed)),
            around,
            stop));
        return command;
    }
}
