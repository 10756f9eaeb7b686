using System.CommandLine;
using System.Globalization;
using ProcScript.Analysis.Reaching;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>reach</c>.</summary>
internal static class ReachCommand
{
    private const string Text = "text";

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        LibraryOptions library = new();
        ColourOption colour = new();
        Argument<string[]> items = new("ITEM") { Description = "A part or a joint, by its name or its title.", Arity = ArgumentArity.OneOrMore };
        Option<string?> machine = new("--machine") { Description = "The machine, where several have such an item.", HelpName = "NAME" };
        Option<string[]> with = new("--with") { Description = "The variant that has exactly these options; may be given several times.", HelpName = "OPTION" };
        Option<string> purpose = new("--for") { Description = "What it is reached for.", HelpName = "remove|inspect|replace", DefaultValueFactory = _ => "remove" };
        purpose.AcceptOnlyFromAmong("remove", "inspect", "replace");
        Option<string?> explain = new("--explain") { Description = "Say only why an action is needed, as a chain: a step's number, 'undo lid_bolts', or an item.", HelpName = "ACTION" };
        Option<string?> write = new("--write") { Description = "Write it as a procedure to FILE, which must not be there.", HelpName = "FILE" };
        Option<double> person = Weight("--person-weight", "What each second of a further person counts, in seconds.");
        Option<double> part = Weight("--part-weight", "What a new part counts, in seconds a piece.");
        Option<double> risk = Weight("--risk-weight", "What a step counts, in seconds, that touches a hazard.");
        Option<int> others = new("--others") { Description = "How many of the next best ways are told.", HelpName = "N", DefaultValueFactory = _ => 3 };
        Option<string> format = new("--format") { Description = "The form of the answer.", HelpName = "text|json", DefaultValueFactory = _ => Text };
        format.AcceptOnlyFromAmong(Text, "json");
        LibraryNames names = new(library.Read, around);
        names.Complete(items, LibraryNames.Items);
        names.Complete(machine, LibraryNames.Machines);
        VerbCommand command = new("reach", "Says how a part or a joint is reached: what comes off, goes aside and is made safe, in what order, and why.")
        {
            Notes =
            [
                """
                The way is the cheapest by time there and back, over all that the machine leaves open: aside or off, any way of an
                'or', one control or another. It is performed on the machine, and back, and proven like any procedure. Where the
                search ends too soon, the answer says how far it may be from the cheapest.
                """,
                """
                What is asked for together is reached in one job. People, tools, alerts and the like are those that the procedures
                of the library say of the same actions. An item that some variants lack is looked for in the plainest that has it.
                """,
                "Exit codes: 0 answered, 1 there is no way, 2 wrong usage, unreadable input or unwritable output, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript reach evaporator --in procedures", "How the evaporator comes off."),
                ("procscript reach seat_bolts --in procedures --for inspect", "How a hand gets at the bolts of the seat."),
                ("procscript reach evaporator --in procedures --explain 'remove seat'", "Why the seat has to come off for it."),
                ("procscript reach evaporator --in procedures --for replace --write procedures/new-evaporator.proc", "Write it as a procedure to go on from."),
                ("procscript reach evaporator --in procedures --format json", "The same for a program."),
            ],
        };
        command.Add(items);
        library.AddTo(command);
        foreach (var option in (IEnumerable<Option>)[machine, with, purpose, explain, write, person, part, risk, others, format])
        {
            command.Add(option);
        }

        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await ReachVerb.RunAsync(
            new ReachVerbRequest(
                library.Read(parsed),
                new ReachRequest([.. parsed.GetRequiredValue(items)], parsed.GetValue(purpose) switch { "inspect" => ReachPurpose.Inspect, "replace" => ReachPurpose.Replace, _ => ReachPurpose.Remove })
                {
                    Machine = parsed.GetValue(machine),
                    With = parsed.GetValue(with) is { Length: > 0 } options ? [.. options.Distinct(StringComparer.Ordinal)] : null,
                    Weights = new ReachWeights(parsed.GetValue(person), parsed.GetValue(part), parsed.GetValue(risk)),
                    RunnersUp = Math.Clamp(parsed.GetValue(others), 0, MostOthers),
                },
                parsed.GetValue(explain),
                parsed.GetValue(write),
                parsed.GetValue(format) == Text,
                colour.Read(parsed)),
            around,
            stop));
        return command;
    }

    /// <summary>How many of the next best ways anybody reads.</summary>
    private const int MostOthers = 12;

    private static Option<double> Weight(string name, string description)
    {
        Option<double> option = new(name) { Description = description, HelpName = "N", DefaultValueFactory = _ => 0 };
        option.CustomParser = result =>
        {
            if (double.TryParse(result.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= 0 && double.IsFinite(value))
            {
                return value;
            }

            result.AddError($"{name} takes a number from 0 on, not '{result.Tokens[0].Value}'.");
            return 0;
        };
        return option;
    }
}
