using System.Collections.Immutable;
using System.CommandLine;
using ProcScript.Analysis.Reaching;
using ProcScript.Cards.Maps;
using ProcScript.Cards.Reaching;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of the questions about a machine beside <c>reach</c>: <c>back</c>, <c>together</c>, <c>why</c> and <c>map</c>.</summary>
internal static class QuestionCommands
{
    private const string ExitCodes = "Exit codes: 0 answered, 1 there is no answer, 2 wrong usage or unreadable input, 3 a fault of procscript.";

    /// <summary><c>back</c>.</summary>
    public static Command Back(Surroundings around)
    {
        Asking asking = new();
        Argument<string> job = new("PROCEDURE") { Description = "The procedure, with its arguments behind hyphens." };
        asking.Names(around).Complete(job, LibraryNames.Jobs);
        Option<int> after = new("--after") { Description = "The last step that is done, as cards number them.", HelpName = "STEP", Required = true };
        VerbCommand command = new("back", "Says how a machine goes back together when a job stops in the middle.")
        {
            Notes =
            [
                """
                The way back is derived and proven like the refit of a whole job. What came off in pieces, or by halves, goes back in one
                where that holds. What serves only once, or was disturbed, is renewed on the way.
                """,
                ExitCodes,
            ],
            Examples = [("procscript back seat_out --after 6 --in procedures", "How the cab goes back together after step 6.")],
        };
        command.Add(job);
        command.Add(after);
        asking.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await QuestionVerb.RunAsync(
            asking.Read(parsed),
            (library, settings) => LibraryBack.Find(library, settings, parsed.GetRequiredValue(job), parsed.GetValue(after), asking.With(parsed)),
            AnswerText.Lines,
            AnswerText.Json,
            around,
            stop));
        return command;
    }

    /// <summary><c>together</c>.</summary>
    public static Command Together(Surroundings around)
    {
        Asking asking = new();
        Argument<string[]> jobs = new("JOB") { Description = "Two procedures or more on one machine.", Arity = ArgumentArity.OneOrMore };
        asking.Names(around).Complete(jobs, LibraryNames.Jobs);
        VerbCommand command = new("together", "Says how several jobs on one machine are done in one visit, and what time that saves.")
        {
            Notes =
            [
                """
                What one job has taken off the next finds off, and all goes back once. What a job does only to clear its own way is left out
                where another job clears it all the same; what it does for its work, or to make safe, never is.
                """,
                """
                The quickest visit is performed there and back, and proven. Where it cannot be shown that no other is quicker, the answer
                says how much another may save.
                """,
                ExitCodes,
            ],
            Examples = [("procscript together seat_out headliner_out --in procedures", "Both jobs in one visit.")],
        };
        command.Add(jobs);
        asking.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await QuestionVerb.RunAsync(
            asking.Read(parsed),
            (library, settings) => LibraryTogether.Find(library, settings, [.. parsed.GetRequiredValue(jobs)], asking.With(parsed)),
            AnswerText.Lines,
            AnswerText.Json,
            around,
            stop));
        return command;
    }

    /// <summary><c>why</c>.</summary>
    public static Command Why(Surroundings around)
    {
        Asking asking = new();
        Argument<string> item = new("ITEM") { Description = "An item, by its name or its title." };
        Option<string?> machine = new("--machine") { Description = "The machine, where several have such an item.", HelpName = "NAME" };
        var names = asking.Names(around);
        names.Complete(item, LibraryNames.Items);
        names.Complete(machine, LibraryNames.Machines);
        VerbCommand command = new("why", "Says what hides, holds and feeds an item, what it is in the way of, and who touches it.")
        {
            Notes = [ExitCodes],
            Examples = [("procscript why evaporator --in procedures", "What the evaporator has to do with.")],
        };
        command.Add(item);
        command.Add(machine);
        asking.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await QuestionVerb.RunAsync(
            asking.Read(parsed),
            (library, _) => LibraryWhy.Find(library, parsed.GetRequiredValue(item), parsed.GetValue(machine), asking.With(parsed)),
            AnswerText.Lines,
            AnswerText.Json,
            around,
            stop));
        return command;
    }

    /// <summary><c>map</c>.</summary>
    public static Command Map(Surroundings around)
    {
        LibraryOptions library = new();
        Argument<string?> machine = new("MACHINE") { Description = "The machine; may be left out where there is but one.", Arity = ArgumentArity.ZeroOrOne };
        Option<string[]> with = Asking.WithOption();
        Option<string?> job = new("--job") { Description = "Show how this job leaves the machine.", HelpName = "PROCEDURE" };
        Option<int> after = new("--after") { Description = "With --job: the last step that is done.", HelpName = "STEP" };
        Option<string> format = new("--format") { Description = "The form of the map.", HelpName = "svg|dot|mermaid|html", DefaultValueFactory = _ => "html" };
        format.AcceptOnlyFromAmong("svg", "dot", "mermaid", "html");
        Option<string?> output = new("--output", "-o") { Description = "Write it to FILE.", HelpName = "FILE" };
        LibraryNames names = new(library.Read, around);
        names.Complete(machine, LibraryNames.Machines);
        names.Complete(job, LibraryNames.Jobs);
        VerbCommand command = new("map", "Draws the parts of a machine in the layers in which they come off, and what hides what.")
        {
            Notes = ["Each part leads to what ties it, what it hides, and what hides it. Of a large machine the boxes are small, and lines that nobody could follow are left to the list.", ExitCodes],
            Examples =
            [
                ("procscript map ketterby_t40 --in procedures -o cab.html", "A page to look around in."),
                ("procscript map --in procedures --job seat_out --after 6 --format svg -o seat.svg", "How the machine stands after step 6."),
            ],
        };
        command.Add(machine);
        library.AddTo(command);
        foreach (var option in (IEnumerable<Option>)[with, job, after, format, output])
        {
            command.Add(option);
        }

        command.SetAction(async (parsed, stop) => (int)await QuestionVerb.MapAsync(
            library.Read(parsed),
            bound => MachineMap.Of(bound, parsed.GetValue(machine), Asking.Options(parsed, with), parsed.GetValue(job), parsed.GetValue(after)),
            parsed.GetValue(format) switch { "svg" => MachineMapText.Svg, "dot" => MachineMapText.Dot, "mermaid" => MachineMapText.Mermaid, _ => MachineMapPage.Html },
            parsed.GetValue(output),
            around,
            stop));
        return command;
    }

    /// <summary>The options that these questions share.</summary>
    private sealed class Asking
    {
        private readonly LibraryOptions _library = new();
        private readonly ColourOption _colour = new();
        private readonly Option<string[]> _with = WithOption();
        private readonly Option<string> _format = new("--format") { Description = "The form of the answer.", HelpName = "text|json", DefaultValueFactory = _ => "text" };

        public static Option<string[]> WithOption() =>
            new("--with") { Description = "The variant that has exactly these options; may be given several times.", HelpName = "OPTION" };

        public static ImmutableArray<string>? Options(ParseResult parsed, Option<string[]> with) =>
            parsed.GetValue(with) is { Length: > 0 } options ? [.. options.Distinct(StringComparer.Ordinal)] : null;

        public void AddTo(Command command)
        {
            _library.AddTo(command);
            command.Add(_with);
            _format.AcceptOnlyFromAmong("text", "json");
            command.Add(_format);
            _colour.AddTo(command);
        }

        public LibraryNames Names(Surroundings around) => new(_library.Read, around);

        public ImmutableArray<string>? With(ParseResult parsed) => Options(parsed, _with);

        public QuestionRequest Read(ParseResult parsed) => new(_library.Read(parsed), parsed.GetValue(_format) == "text", _colour.Read(parsed));
    }
}
