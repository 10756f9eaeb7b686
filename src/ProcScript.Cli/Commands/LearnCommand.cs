using System.CommandLine;
using ProcScript.Cli.Jobs;
using ProcScript.Jobs.Learning;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>learn</c>.</summary>
internal static class LearnCommand
{
    private const string Text = "text";
    private const string Json = "json";

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        LibraryOptions library = new();
        WordingOption wording = new();
        ColourOption colour = new();
        Argument<string[]> jobs = new("JOBS")
        {
            Description = "A job's folder, or a folder of jobs; without one, 'jobs' in the current folder.",
            Arity = ArgumentArity.ZeroOrMore,
            DefaultValueFactory = _ => ["jobs"],
        };
        Option<int> atLeast = new("--at-least") { Description = "How many jobs have to tell the same.", HelpName = "N", DefaultValueFactory = _ => new LearnRequest().AtLeast };
        atLeast.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() < 1)
            {
                result.AddError("--at-least takes a number from 1 up.");
            }
        });
        Option<string[]> only = new("--only") { Description = "Suggestions of this sort only; may be given several times.", HelpName = string.Join('|', LearnVerb.Sorts) };
        only.AcceptOnlyFromAmong([.. LearnVerb.Sorts]);
        Option<bool> apply = new("--apply") { Description = "Write what is suggested into the library; look at it first." };
        Option<bool> diff = new("--diff") { Description = "Write nothing; show the files as they would come out." };
        Option<string> format = new("--format") { Description = "The form of the answer.", HelpName = $"{Text}|{Json}", DefaultValueFactory = _ => Text };
        format.AcceptOnlyFromAmong(Text, Json);
        VerbCommand command = new("learn", "Says what the records of jobs teach the library: times, spares, supplies, tools, notes.")
        {
            Notes =
            [
                """
                Every job counts once, open or closed, and so many have to tell the same as --at-least says. What they tell is held
                against the library as it is now: steps are found again by what is done to what. Nothing is written without --apply;
                then all is written that, by a second check, brings no error, as 'fix' does with what needs a look.
                """,
                """
                A step takes as long as it is from the tick before of the same person to its own, less the pauses. No measure is the
                first tick of somebody; what was handed over, undone, or done with another count; what waits or runs in the background;
                what comes after other work or new cards; what takes over two hours and over four times the plan; and steps ticked
                within a minute each, where those after the first came in half of their planned time.
                """,
                """
                Told is the median, and the spread: the middle half of the jobs, of fewer than five jobs all. A time is suggested where
                the one that counts lies outside the spread, rounded as one would write it, and at the place that it is written at:
                the action, the item, the kind in the catalog. Of a kind it is the time of one piece: a step's time is shared by
                its pieces. Steps that share a place, and whose medians differ by more than twice, are told of one by one; a usual time is
                replaced at the action.
                """,
                """
                Spares are suggested where the share written lies outside the range in which the true one is with 95 % confidence,
                and 'single use' where every piece broke in every job. Tools are those told by 'job missing --tool'. Notes say
                the same where two thirds of their words are the same, and go to the step that they were made at.
                """,
                "Exit codes: 0 nothing to suggest, or all written, 1 suggestions, or a record that cannot be used, 2 wrong usage or unreadable input, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript learn jobs --in procedures", "See what the shop's jobs teach."),
                ("procscript learn jobs --in procedures --only time --diff", "See the times as they would be written."),
                ("procscript learn jobs --in procedures --only time --apply", "Write them."),
                ("procscript learn jobs/4711-K-0117-seat_out --in procedures --at-least 1", "What one job tells."),
            ],
        };
        command.Add(jobs);
        library.AddTo(command);
        foreach (var option in (IEnumerable<Option>)[atLeast, only, apply, diff, format])
        {
            command.Add(option);
        }

        wording.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await LearnVerb.RunAsync(
            new LearnVerbRequest(
                [.. parsed.GetRequiredValue(jobs)],
                library.Read(parsed),
                wording.Read(parsed),
                parsed.GetValue(atLeast),
                [.. parsed.GetValue(only) ?? []],
                parsed.GetValue(apply),
                parsed.GetValue(diff),
                parsed.GetValue(format) == Json,
                colour.Read(parsed)),
            around,
            stop));
        return command;
    }
}
