using System.CommandLine;
using System.Globalization;
using ProcScript.Cli.Commands;
using ProcScript.Jobs.Journals;

namespace ProcScript.Cli.Jobs;

/// <summary>The arguments of <c>job</c> and the verbs below it.</summary>
internal static class JobCommand
{
    private const string ExitCodes = "Exit codes: 0 done, 1 it cannot be closed or is not proven, 2 wrong usage or unreadable input, 3 a fault of procscript.";

    /// <summary>The command.</summary>
    public static Command Create(Surroundings around) => new VerbCommand("job", "Keeps the record of a job while it is done: what happened, how the machine stands, what is left.")
    {
        Notes =
        [
            """
            A job is a folder: the cards and the texts as they were when it was opened, photos, and a journal to which every event adds a
            line. A line is on the disk before it is told, and no line is ever changed: each holds the hash of the one before.
            """,
            """
            The record takes what happened, planned or not, and says what it means for who works on. It replaces no manufacturer's data, no
            local code and no licensed person.
            """,
            ExitCodes,
        ],
        Examples =
        [
            ("procscript job open seat_out --in procedures --machine-serial K-0117 --order 4711 --by Kern", "Freeze the cards and begin."),
            ("procscript job done jobs/4711-K-0117-seat_out 1 2 3 --by Kern", "Steps 1 to 3 are done."),
            ("procscript job status jobs/4711-K-0117-seat_out", "See what is out and where, and what may be done next."),
        ],
        Subcommands =
        {
            Open(around),
            List(around),
            Status(around),
            Done(around),
            Undone(around),
            Did(around),
            Reading(around),
            Photo(around),
            Words("note", "Notes something.", EventKind.Note, "TEXT", "What is noted.", true, around),
            Pieces("broke", "Says that something broke.", EventKind.Broke, around),
            Missing(around),
            Pieces("found", "Says that pieces more than the plan knows of came off, or that some turned up.", EventKind.Found, around),
            Bag(around),
            Cap(around),
            HandOver(around),
            Words("pause", "Says that the work stops.", EventKind.Pause, "REASON", "Why.", false, around),
            Words("resume", "Says that the work goes on.", EventKind.Resume, "TEXT", "What has to be said about it.", false, around),
            Sign(around),
            Refit(around),
            Rebase(around),
            Close(around),
            Report(around),
            Labels(around),
            Serve(around),
        },
    };

    private static Command Open(Surroundings around)
    {
        LibraryOptions library = new();
        ColourOption colour = new();
        Argument<string> procedure = new("PROCEDURE") { Description = "The procedure, with its arguments behind hyphens." };
        Option<string[]> with = new("--with") { Description = "An option that the machine has; may be given several times.", HelpName = "OPTION" };
        Option<string> serial = new("--machine-serial") { Description = "Which machine it is: its serial number or the like.", HelpName = "TEXT", DefaultValueFactory = _ => "" };
        Option<string> order = new("--order") { Description = "The work order.", HelpName = "TEXT", DefaultValueFactory = _ => "" };
        Option<string> jobs = new("--jobs") { Description = "The folder of jobs; without it, 'jobs' in the current folder.", HelpName = "DIR", DefaultValueFactory = _ => "jobs" };
        var by = ByOption();
        var command = Verb("open", "Opens a job on a proven procedure: freezes its cards and begins its journal.", "procscript job open seat_out --in procedures --order 4711 --by Kern", "Open it.");
        new LibraryNames(library.Read, around).Complete(procedure, LibraryNames.Jobs);
        command.Add(procedure);
        library.AddTo(command);
        Add(command, with, serial, order, jobs, by);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await OpenVerb.RunAsync(
            new OpenRequest(
                library.Read(parsed), parsed.GetRequiredValue(procedure), [.. (parsed.GetValue(with) ?? []).Distinct(StringComparer.Ordinal)],
                parsed.GetValue(serial)!, parsed.GetValue(order)!, parsed.GetValue(jobs)!, Named(parsed, by, around), colour.Read(parsed)),
            around,
            stop));
        return command;
    }

    private static Command List(Surroundings around)
    {
        ColourOption colour = new();
        Argument<string> jobs = new("JOBS") { Description = "The folder of jobs; without it, 'jobs' in the current folder.", Arity = ArgumentArity.ZeroOrOne, DefaultValueFactory = _ => "jobs" };
        var command = Verb("list", "Lists the jobs of a folder, and how far they are.", "procscript job list jobs", "All jobs of the shop.");
        command.Add(jobs);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await StatusVerb.ListAsync(parsed.GetValue(jobs)!, colour.Read(parsed), around, stop));
        return command;
    }

    private static Command Status(Surroundings around)
    {
        ColourOption colour = new();
        var job = JobArgument();
        Option<string> format = new("--format") { Description = "The form of the answer.", HelpName = "text|json", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "json");
        var command = Verb("status", "Says how a job stands: what is out and where, what is live, empty or capped, what may be done, the way back.", "procscript job status jobs/4711-seat_out", "See how it stands.");
        command.Add(job);
        command.Add(format);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await StatusVerb.RunAsync(parsed.GetRequiredValue(job), parsed.GetValue(format) == "text", colour.Read(parsed), around, stop));
        return command;
    }

    private static Command Done(Surroundings around)
    {
        Telling telling = new();
        Argument<int[]> steps = new("STEP") { Description = "The steps, as the cards number them, in the order in which they were done.", Arity = ArgumentArity.OneOrMore };
        Option<int?> count = new("--count") { Description = "How many pieces came off or went on, where it is another number than the card's.", HelpName = "N" };
        var command = Verb("done", "Says that steps are done.", "procscript job done jobs/4711-seat_out 4 --count 3", "Three of its four pieces.");
        telling.AddTo(command, steps, count);
        command.SetAction(telling.Action(around, (parsed, request) =>
            parsed.GetRequiredValue(steps).Select(step => EventVerb.New(EventKind.Done, request, around) with { Step = step, Count = parsed.GetValue(count) })));
        return command;
    }

    private static Command Undone(Surroundings around)
    {
        Telling telling = new();
        Argument<int[]> steps = new("STEP") { Description = "The steps.", Arity = ArgumentArity.ZeroOrMore };
        Option<int?> number = new("--event") { Description = "An event that was a slip: it counts for nothing.", HelpName = "N" };
        var command = Verb("undone", "Says that steps were undone again, or that an event was a slip.", "procscript job undone jobs/4711-seat_out --event 17", "Event 17 never was.");
        telling.AddTo(command, steps, number);
        command.SetAction(telling.Action(around, (parsed, request) => (parsed.GetValue(steps) ?? [], parsed.GetValue(number)) switch
        {
            ([_, ..] all, null) => all.Select(step => EventVerb.New(EventKind.Undone, request, around) with { Step = step }),
            ([], { } slip) => [EventVerb.New(EventKind.Undone, request, around) with { Event = slip }],
            _ => throw new UsageException("say either steps that were undone, or --event N that was a slip."),
        }));
        return command;
    }

    private static Command Did(Surroundings around)
    {
        Telling telling = new();
        Argument<string> verb = new("VERB") { Description = "What was done, as the language says it: undo, remove, plug." };
        Argument<string> item = new("ITEM") { Description = "To what: its name in the texts." };
        Option<int?> count = new("--count") { Description = "How many pieces of a joint; all without it.", HelpName = "N" };
        Option<string?> position = new("--position") { Description = "Of a control, the position.", HelpName = "NAME" };
        var command = Verb("did", "Says that something was done that is no step of the cards.", "procscript job did jobs/4711-seat_out undo seat_bolts --count 1", "One bolt that nobody planned.");
        telling.AddTo(command, verb, item, count, position);
        command.SetAction(telling.Action(around, (parsed, request) =>
        [
            EventVerb.New(EventKind.Did, request, around) with { Verb = parsed.GetValue(verb), Item = parsed.GetValue(item), Count = parsed.GetValue(count), Position = parsed.GetValue(position) },
        ]));
        return command;
    }

    private static Command Reading(Surroundings around)
    {
        Telling telling = new();
        Argument<int> step = new("STEP") { Description = "The step." };
        Argument<string> value = new("VALUE") { Description = "What was read, with its unit: '12.6 V'." };
        var command = Verb("reading", "Writes down a reading.", "procscript job reading jobs/4711-seat_out 2 '0 V'", "What was measured at step 2.");
        telling.AddTo(command, step, value);
        command.SetAction(telling.Action(around, (parsed, request) =>
            [EventVerb.New(EventKind.Reading, request, around) with { Step = parsed.GetValue(step), Value = parsed.GetValue(value) }]));
        return command;
    }

    private static Command Photo(Surroundings around)
    {
        Telling telling = new();
        Argument<string> file = new("FILE") { Description = "The picture: JPEG, PNG or WebP." };
        Option<int?> step = new("--step") { Description = "The step that it belongs to.", HelpName = "N" };
        Option<string?> text = new("--text") { Description = "What it shows.", HelpName = "TEXT" };
        var command = Verb("photo", "Keeps a photo with the job.", "procscript job photo jobs/4711-seat_out plug.jpg --step 12", "How the plug sat.");
        telling.AddTo(command, file, step, text);
        command.SetAction(async (parsed, stop) => (int)await PhotoVerb.RunAsync(
            telling.Request(parsed, around), parsed.GetRequiredValue(file), parsed.GetValue(step), parsed.GetValue(text), around, stop));
        return command;
    }

    private static Command Words(string name, string description, EventKind kind, string argument, string meaning, bool isNeeded, Surroundings around)
    {
        Telling telling = new();
        Argument<string?> text = new(argument) { Description = meaning, Arity = isNeeded ? ArgumentArity.ExactlyOne : ArgumentArity.ZeroOrOne };
        Option<int?> step = new("--step") { Description = "The step that it belongs to.", HelpName = "N" };
        var command = Verb(name, description, $"procscript job {name} jobs/4711-seat_out{(isNeeded ? " 'the bracket is bent'" : "")}", "Into the journal.");
        telling.AddTo(command, text, step);
        command.SetAction(telling.Action(around, (parsed, request) =>
            [EventVerb.New(kind, request, around) with { Text = parsed.GetValue(text), Step = parsed.GetValue(step) }]));
        return command;
    }

    private static Command Pieces(string name, string description, EventKind kind, Surroundings around)
    {
        Telling telling = new();
        PieceOptions pieces = new();
        var command = Verb(name, description, $"procscript job {name} jobs/4711-seat_out trim_clips --count 2", "Two of them.");
        pieces.AddTo(command, telling);
        command.SetAction(telling.Action(around, (parsed, request) => [pieces.Event(parsed, EventVerb.New(kind, request, around))]));
        return command;
    }

    private static Command Missing(Surroundings around)
    {
        Telling telling = new();
        PieceOptions pieces = new();
        Option<string?> tool = new("--tool") { Description = "A tool that the cards do not name: its name in the texts, or what it is.", HelpName = "NAME" };
        Option<int?> step = new("--step") { Description = "With --tool: the step that takes it.", HelpName = "N" };
        VerbCommand command = new("missing", "Says that pieces were not there, or are lost; or that a tool was missing.")
        {
            Notes = ["What several jobs tell of a missing tool, 'procscript learn' suggests for the library.", ExitCodes],
            Examples =
            [
                ("procscript job missing jobs/4711-seat_out trim_clips --count 2", "Two of them."),
                ("procscript job missing jobs/4711-seat_out --tool ext_600 --step 12", "Step 12 takes a tool that the cards do not name."),
            ],
        };
        pieces.AddTo(command, telling, tool, step);
        command.SetAction(telling.Action(around, (parsed, request) => (parsed.GetValue(tool), parsed.GetValue(step)) switch
        {
            (null, { }) => throw new UsageException("--step goes with --tool: of pieces say the item."),
            (null, null) => [pieces.Event(parsed, EventVerb.New(EventKind.Missing, request, around))],
            var (named, at) when !pieces.AreTyped(parsed) => [EventVerb.New(EventKind.Missing, request, around) with { Tool = named, Step = at }],
            _ => throw new UsageException("a tool is no piece of the machine: say either --tool or the item."),
        }));
        return command;
    }

    private static Command Bag(Surroundings around)
    {
        Telling telling = new();
        Argument<int> bag = new("BAG") { Description = "The bag." };
        Option<int?> count = new("--count") { Description = "How many pieces were counted in it.", HelpName = "N" };
        Option<string?> where = new("--where") { Description = "Where it lies.", HelpName = "TEXT" };
        var command = Verb("bag", "Says how many pieces a bag holds, or where it lies.", "procscript job bag jobs/4711-seat_out 2 --count 7 --where 'shelf 3'", "Counted and put away.");
        telling.AddTo(command, bag, count, where);
        command.SetAction(telling.Action(around, (parsed, request) =>
            [EventVerb.New(EventKind.Bag, request, around) with { Bag = parsed.GetValue(bag), Count = parsed.GetValue(count), Text = parsed.GetValue(where) }]));
        return command;
    }

    private static Command Cap(Surroundings around)
    {
        Telling telling = new();
        Argument<string> item = new("ITEM") { Description = "The joint or the part whose opening it is." };
        Option<bool> off = new("--off") { Description = "It came off again." };
        Option<int?> count = new("--count") { Description = "How many; all without it.", HelpName = "N" };
        var command = Verb("cap", "Says that an opening was capped, or its cap came off, where no step says so.", "procscript job cap jobs/4711-seat_out brake_line", "The line is capped.");
        telling.AddTo(command, item, off, count);
        command.SetAction(telling.Action(around, (parsed, request) =>
        [
            EventVerb.New(EventKind.Did, request, around) with { Verb = parsed.GetValue(off) ? "uncap" : "cap", Item = parsed.GetValue(item), Count = parsed.GetValue(count) },
        ]));
        return command;
    }

    private static Command HandOver(Surroundings around)
    {
        Telling telling = new();
        Option<string> to = new("--to") { Description = "To whom.", HelpName = "NAME", Required = true };
        Argument<string?> text = new("TEXT") { Description = "What has to be said about it.", Arity = ArgumentArity.ZeroOrOne };
        var command = Verb("hand-over", "Hands the work over to somebody else.", "procscript job hand-over jobs/4711-seat_out --to Brandt", "Brandt goes on.");
        telling.AddTo(command, text, to);
        command.SetAction(telling.Action(around, (parsed, request) =>
            [EventVerb.New(EventKind.HandOver, request, around) with { To = parsed.GetValue(to), Text = parsed.GetValue(text) }]));
        return command;
    }

    private static Command Sign(Surroundings around)
    {
        Telling telling = new();
        Argument<int?> step = new("STEP") { Description = "The step that was looked at; the whole job without it.", Arity = ArgumentArity.ZeroOrOne };
        Option<string?> text = new("--text") { Description = "What is signed for.", HelpName = "TEXT" };
        var command = Verb("sign", "Signs for a step, or for the job.", "procscript job sign jobs/4711-seat_out 31 --by Brandt", "The second pair of eyes.");
        telling.AddTo(command, step, text);
        command.SetAction(telling.Action(around, (parsed, request) =>
            [EventVerb.New(EventKind.Sign, request, around) with { Step = parsed.GetValue(step), Text = parsed.GetValue(text) }]));
        return command;
    }

    private static Command Refit(Surroundings around)
    {
        Telling telling = new();
        var command = Verb("refit", "Derives the refit anew from how the machine truly stands, and makes new cards.", "procscript job refit jobs/4711-seat_out", "Cards to go on with.");
        telling.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await RefitVerb.RunAsync(telling.Request(parsed, around), around, stop));
        return command;
    }

    private static Command Rebase(Surroundings around)
    {
        Telling telling = new();
        LibraryOptions library = new();
        Option<bool> dry = new("--dry-run") { Description = "Say what it would mean, and write nothing." };
        var command = Verb("rebase", "Goes on by a newer text of the procedure, where that can be proven for the machine as it stands.", "procscript job rebase jobs/4711-seat_out --in procedures --dry-run", "See what the new text means.");
        telling.AddTo(command, dry);
        library.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await RebaseVerb.RunAsync(telling.Request(parsed, around), library.Read(parsed), parsed.GetValue(dry), around, stop));
        return command;
    }

    private static Command Close(Surroundings around)
    {
        Telling telling = new();
        Option<string?> despite = new("--despite") { Description = "Why it is closed although something is open; the record names what.", HelpName = "REASON" };
        var command = Verb("close", "Closes a job whose machine is whole.", "procscript job close jobs/4711-seat_out --by Brandt", "Close it.");
        telling.AddTo(command, despite);
        command.SetAction(async (parsed, stop) => (int)await EventVerb.CloseAsync(telling.Request(parsed, around), parsed.GetValue(despite), around, stop));
        return command;
    }

    private static Command Report(Surroundings around)
    {
        ColourOption colour = new();
        var job = JobArgument();
        Option<string> format = new("--format") { Description = "The form.", HelpName = "html|md", DefaultValueFactory = _ => "html" };
        format.AcceptOnlyFromAmong("html", "md");
        Option<string?> output = new("--output", "-o") { Description = "Write it to FILE; without it, 'as-done' in the job's folder.", HelpName = "FILE" };
        var command = Verb("report", "Writes what was done: steps with names, readings, photos, what was otherwise than planned.", "procscript job report jobs/4711-seat_out", "The record to print and to file.");
        command.Add(job);
        Add(command, format, output);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await ReportVerb.RunAsync(parsed.GetRequiredValue(job), parsed.GetValue(format) == "html", parsed.GetValue(output), colour.Read(parsed), around, stop));
        return command;
    }

    private static Command Labels(Surroundings around)
    {
        ColourOption colour = new();
        var job = JobArgument();
        Option<string?> address = new("--address") { Description = "Where the shop's tablets find its jobs; codes lead there.", HelpName = "URL" };
        Option<string?> output = new("--output", "-o") { Description = "Write them to FILE; without it, 'job-labels.html' in the job's folder.", HelpName = "FILE" };
        var command = Verb("labels", "Writes labels for the bags and parts of a job, with codes to scan.", "procscript job labels jobs/4711-seat_out --address https://floor.example:8443", "Labels that open the bag's page.");
        command.Add(job);
        Add(command, address, output);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await LabelsVerb.RunAsync(parsed.GetRequiredValue(job), parsed.GetValue(address), parsed.GetValue(output), colour.Read(parsed), around, stop));
        return command;
    }

    private static Command Serve(Surroundings around)
    {
        Option<string> jobs = new("--jobs") { Description = "The folder of jobs; without it, 'jobs' in the current folder.", HelpName = "DIR", DefaultValueFactory = _ => "jobs" };
        VerbCommand command = new("serve", "Serves the jobs to browsers and tablets, by the tool procscript-floor.")
        {
            Notes = ["All other options are those of procscript-floor; 'procscript-floor --help' tells them. Without --lan it serves this machine alone.", ExitCodes],
            Examples = [("procscript job serve --jobs jobs", "Open the address that it prints."), ("procscript job serve --jobs jobs --lan", "For the tablets of the shop, by TLS and a pairing code.")],
            TreatUnmatchedTokensAsErrors = false,
        };
        command.Add(jobs);
        command.SetAction(async (parsed, stop) => (int)await ServeVerb.RunAsync(parsed.GetValue(jobs)!, [.. parsed.UnmatchedTokens], around, stop));
        return command;
    }

    private static VerbCommand Verb(string name, string description, string example, string meaning) =>
        new(name, description) { Notes = [ExitCodes], Examples = [(example, meaning)] };

    private static Argument<string> JobArgument() => new("JOB") { Description = "The job's folder." };

    private static Option<string?> ByOption() => new("--by") { Description = "Who did it; without it, the name in PROCSCRIPT_BY.", HelpName = "NAME" };

    private static string Named(ParseResult parsed, Option<string?> by, Surroundings around) =>
        (parsed.GetValue(by) ?? around.Variable("PROCSCRIPT_BY"))?.Trim() is { Length: > 0 } name
            ? name
            : throw new UsageException("a record without names is worth little: say who, with --by NAME, or once with PROCSCRIPT_BY.");

    private static void Add(Command command, params ReadOnlySpan<Option> options)
    {
        foreach (var option in options)
        {
            command.Add(option);
        }
    }

    /// <summary>What is told of pieces.</summary>
    private sealed class PieceOptions
    {
        private readonly Argument<string?> _item = new("ITEM") { Description = "Of what: its name in the texts.", Arity = ArgumentArity.ZeroOrOne };
        private readonly Option<int?> _count = new("--count") { Description = "How many pieces; one without it.", HelpName = "N" };
        private readonly Option<int?> _bag = new("--bag") { Description = "The bag that they belong in.", HelpName = "N" };
        private readonly Option<string?> _what = new("--what") { Description = "What it is, where it is no item of the texts.", HelpName = "TEXT" };

        public void AddTo(Command command, Telling telling, params ReadOnlySpan<Symbol> more) => telling.AddTo(command, [_item, _count, _bag, _what, .. more]);

        public bool AreTyped(ParseResult parsed) => parsed.GetValue(_item) is not null || parsed.GetValue(_count) is not null || parsed.GetValue(_bag) is not null || parsed.GetValue(_what) is not null;

        public JobEvent Event(ParseResult parsed, JobEvent happened) =>
            happened with { Item = parsed.GetValue(_item), Count = parsed.GetValue(_count) ?? 1, Bag = parsed.GetValue(_bag), Text = parsed.GetValue(_what) };
    }

    /// <summary>What every event has: the job, who, and when.</summary>
    private sealed class Telling
    {
        private readonly Argument<string> _job = JobArgument();
        private readonly Option<string?> _by = ByOption();
        private readonly Option<string?> _at = new("--at") { Description = "When it happened: 2026-03-01T14:30; without it, now.", HelpName = "TIME" };
        private readonly ColourOption _colour = new();

        public void AddTo(Command command, params ReadOnlySpan<Symbol> more)
        {
            command.Add(_job);
            foreach (var symbol in more)
            {
                if (symbol is Argument argument)
                {
                    command.Add(argument);
                }
                else
                {
                    command.Add((Option)symbol);
                }
            }

            Add(command, _by, _at);
            _colour.AddTo(command);
        }

        public EventRequest Request(ParseResult parsed, Surroundings around) =>
            new(parsed.GetRequiredValue(_job), Named(parsed, _by, around), When(parsed.GetValue(_at), around), _colour.Read(parsed));

        public Func<ParseResult, CancellationToken, Task<int>> Action(Surroundings around, Func<ParseResult, EventRequest, IEnumerable<JobEvent>> tell) =>
            async (parsed, stop) =>
            {
                var request = Request(parsed, around);
                return (int)await EventVerb.RunAsync(request, tell(parsed, request), around, stop);
            };

        private static DateTimeOffset? When(string? typed, Surroundings around)
        {
            if (typed is null)
            {
                return null;
            }

            return !DateTime.TryParse(typed, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal, out _)
                || !DateTimeOffset.TryParse(typed, CultureInfo.InvariantCulture, DateTimeStyles.AssumeLocal, out var at)
                    ? throw new UsageException($"'{typed}' is no time: 2026-03-01T14:30 is one.")
                    : at > around.Clock.GetLocalNow().AddDays(1) ? throw new UsageException($"'{typed}' has not come yet.")
                    : at;
        }
    }
}
