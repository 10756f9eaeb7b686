using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

/// <summary>The names that fit within a sentence.</summary>
/// <param name="asked">The document.</param>
/// <param name="offset">Where one types.</param>
/// <param name="place">The sentence so far.</param>
internal sealed class NameChoices(Asked asked, int offset, TypingPlace place)
{
    private const int Reference = 18;
    private const int Keyword = 14;
    private const string LeftOut = "left out where it is done already";

    private readonly Machine? _machine = JobsInText.MachineAt(asked, offset);

    /// <summary>The items, in the order in which they are declared.</summary>
    public IEnumerable<CompletionItem> Items()
    {
        var last = place.Words[^1];
        if (place.OpenBracket is >= 0 and var bracket)
        {
            return Ordered(new ValueChoices(asked, offset, _machine).Within(place.Words, bracket));
        }

        return place.Words[0] switch
        {
            "when" => Ordered(new ValueChoices(asked, offset, _machine).OfWhen(place.Words)),
            "goal" when place.Words.Length == 1 => Verbs(),
            "goal" when place.Words.Length == 2 => Items(Targets(last)),
            "do" when place.Words.Length == 1 => Procedures(),
            _ when last == "where" => Ordered([("needed", LeftOut)]),
            "do" when !place.Words.Contains("where") => Ordered([("where", LeftOut)]),
            "procedure" when last == "on" => Machines(),
            "procedure" when place.Words.Contains("on") => Ordered(new ValueChoices(asked, offset, _machine).OfProcedure(place.Words)),
            "measure" or "check" when last is "with" || (last == "," && place.Words.Contains("with")) => Declared("tool"),
            _ when place.Block == "refit" && place.Words.Length > 2 && place.Words[^2] is "before" or "after" => Items(Targets(last)),
            _ when place.Block == "refit" && last is "before" or "after" => Verbs(),
            "drive" or "tool" when place.Block is not "" || place.Words[0] == "drive" => Declared("tool"),
            "held" when IsKindNext => Kinds(KindCategory.Fastener, KindCategory.Clip, KindCategory.Bond),
            "covered" when IsKindNext => Kinds(KindCategory.Clip),
            "locked" when IsKindNext => Kinds(KindCategory.Clip, KindCategory.Bond),
            "wired" when IsKindNext => Kinds(KindCategory.Connector),
            "piped" when IsKindNext => Kinds(KindCategory.Line),
            "carries" => [.. Items(_machine?.Fluids), NoneOf("no fluid")],
            "behind" or "to" => Items(_machine?.Parts),
            "way" when place.Words.Length == 1 => Ordered([("behind", "hidden by parts"), ("needs", "further conditions")]),
            "way" when place.Words[1] == "behind" => Items(_machine?.Parts),
            "way" or "needs" when last is "needs" or "," or "or" => Items(_machine?.Items.Values.OrderBy(item => item.Declared.Span.Start)),
            "way" or "needs" => States(Named(place.Words.Length - 1), last == "at" ? Named(place.Words.Length - 2) : null),
            "uses" or "seals" when last is "of" || place.Words is ["seals", _] => Declared("supply"),
            "cap" when place.Words is ["cap", _] => Declared("tool"),
            "hazard" => Ordered(HazardWords.All.Select(word => (word, ""))),
            "renew" when last is "with" or "," => Items(_machine?.Items.Values.OrderBy(item => item.Declared.Span.Start)),
            "grip" => Ordered(((string[])["good", "fair", "poor"]).Select(word => (word, ""))),
            "pattern" => Ordered(((string[])["star", "listed", "inside out", "none"]).Select(word => (word, ""))),
            "set" when last == "to" => Positions(Named(place.Words.Length - 2)),
            "set" when place.Block != "refit" && Named(place.Words.Length - 1) is not null => Ordered([("to", "the position")]),
            var verb when last == "rest" && place.Words.Length == 2 && ActionTable.Rows.Any(row => row.Word == verb) => Ordered([("of", "what is left")]),
            _ when place.Block == "energy" && last == "after" => Items(_machine?.Energies),
            var word when last == "on" && word is "held" or "wired" or "piped" => [.. Items(_machine?.Energies), NoneOf("no energy")],
            "voltage" when place.Words.Length == 3 => Ordered([("ac", "alternating"), ("dc", "direct")]),
            "verify" when place.Block == "energy" => Proof(last),
            "while" => StillOpen(last),
            "power" => Items(last is "power" or "," ? _machine?.Energies : []),
            "test" when place.Words.Length == 2 => Ordered([("before", "a step"), ("after", "a step")]),
            "restore" when place.Block == "refit" && place.Words.Length == 2 => Ordered([("before", "another step"), ("after", "another step"), ("while", "what is still open")]),
            "strip" or "refit" when place.Words.Length == 1 && place.Block is not ("work" or "refit" or "procedure") =>
                [.. place.Block == "stage" ? Steps(last, last) : [], .. OneWayAlerts()],
            "retorque" when place.Block == "refit" && place.Words.Length == 2 => Ordered([("before", "a step"), ("after", "a step, or words for when it is due"), ("needs", "a state")]),
            "check" when place.Block == "refit" && place.Words.Length == 2 => Ordered([("before", "a step"), ("after", "a step"), ("needs", "a state")]),
            _ when place.Block == "refit" && place.Words.Length == 2 && last is not "of" => Ordered([("before", "another step"), ("after", "another step")]),
            var word when place.Block is "stage" or "work" or "refit" => Steps(word, last),
            _ => [],
        };
    }

    /// <summary>The word that says that there is none, behind all that there is.</summary>
    private static CompletionItem NoneOf(string detail) => new("none", Keyword) { Detail = detail, SortText = "none" };

    private bool IsKindNext => place.Words is [_, "by", _];

    private IEnumerable<CompletionItem> Steps(string verb, string last)
    {
        var isTarget = place.Words.Length == 1 || last == "of";
        if (ActionTable.Rows.FirstOrDefault(row => row.Word == verb) is not { } row || !isTarget)
        {
            return place.Block == "stage" && place.Words.Length > 1 && !place.Words.Contains("where") && last is not ("to" or "in" or "rest")
                ? Ordered([("where", LeftOut)])
                : [];
        }

        if (place.Block == "refit")
        {
            return Items(Targets(verb));
        }

        // Only what can be done here; where nothing can, what is not done yet; where the state is not known, what the verb is for.
        var moment = JobsInText.TrialAt(asked, offset)?.Before(asked.Path, place.Start);
        var suited = Targets(verb).ToList();
        var open = moment is null ? [] : suited.FindAll(item => !moment.IsDone(row.Verb, item));
        var possible = open.FindAll(item => moment!.CanDo(row.Verb, item));
        return Items(possible.Count > 0 ? possible : open.Count > 0 ? open : suited, moment);
    }

    private IEnumerable<MachineItem> Targets(string verb) => ActionTable.Rows.FirstOrDefault(row => row.Word == verb) is { } row && _machine is { } machine
        ? machine.Items.Values.Where(item => (row.Targets & ActionTarget.Of(item)) != 0).OrderBy(item => item.Declared.Span.Start).ThenBy(item => item.Name, StringComparer.Ordinal)
        : [];

    private static IEnumerable<CompletionItem> Items(IEnumerable<MachineItem>? items, MachineMoment? moment = null) =>
        Ordered((items ?? []).Select(item => (item.Name, Detail(item, moment))));

    /// <summary>The title, unless it only repeats the name, and what the item is like.</summary>
    private static string Detail(MachineItem item, MachineMoment? moment)
    {
        var name = string.Join(' ', item.Name.Split(['_', '[', ',', ']'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
        return string.Join(", ", new[] { item.Title == name ? "" : item.Title, moment?.Words(item) ?? "" }.Where(words => words.Length > 0));
    }

    /// <summary>
    /// The item whose name ends at a word of the sentence. An index may stand for a variable; then any item of the family will do.
    /// </summary>
    private MachineItem? Named(int end)
    {
        if (place.Words[end] != "]")
        {
            return _machine?.Items.GetValueOrDefault(place.Words[end]);
        }

        var bracket = place.Words.LastIndexOf("[", end);
        if (bracket < 1)
        {
            return null;
        }

        var family = place.Words[bracket - 1] + "[";
        var name = $"{family}{string.Join(", ", place.Words[(bracket + 1)..end].Where(word => word != ","))}]";
        return _machine?.Items.GetValueOrDefault(name)
            ?? _machine?.Items.Values.OrderBy(item => item.Declared.Span.Start).FirstOrDefault(item => item.Name.StartsWith(family, StringComparison.Ordinal));
    }

    private static IEnumerable<CompletionItem> Positions(MachineItem? item) => item is Control control
        ? Ordered(control.Positions.Select(position => (position, position == control.Positions[0] ? "home" : "")))
        : [];

    /// <summary>What an item can be needed to be; behind <c>at</c> the positions of a control.</summary>
    private static IEnumerable<CompletionItem> States(MachineItem? item, MachineItem? at) => at is not null ? Positions(at) : item switch
    {
        Control => Ordered([("at", "a position")]),
        Energy => Ordered([("isolated", "safe"), ("live", "there")]),
        Fluid => Ordered([("empty", "let out"), ("full", "in")]),
        Part => Ordered([("out", "off the machine"), ("aside", "out of the way"), ("fitted", "in its place"), ("supported", "propped")]),
        Joint => Ordered([("off", "undone"), ("slack", "loosened"), ("fitted", "on")]),
        _ => [],
    };

    /// <summary>What goes on behind the text that says how an energy is proved to be off.</summary>
    private IEnumerable<CompletionItem> Proof(string last) => last switch
    {
        "at" => Items(InOrder(item => item is Joint or Part or Control)),
        "with" or "," => Declared("tool"),
        _ => Ordered(new[] { ("with", "the instrument"), ("at", "where that is done"), ("expect", "what the reading must be") }
            .Where(word => place.Words.Length > 1 && !place.Words.Contains(word.Item1) && !place.Words.Contains("expect"))),
    };

    /// <summary>What may be open although an energy is live, and what goes on behind it.</summary>
    private IEnumerable<CompletionItem> StillOpen(string last) => last switch
    {
        "while" or "," => Items(InOrder(item => item is Joint or Part)),
        "open" => Ordered([("because", "why")]),
        _ => place.Words.Contains("open") ? [] : Ordered([("open", "although it is live")]),
    };

    private IEnumerable<MachineItem>? InOrder(Func<MachineItem, bool> isWanted) =>
        _machine?.Items.Values.Where(isWanted).OrderBy(item => item.Declared.Span.Start).ThenBy(item => item.Name, StringComparer.Ordinal);

    private IEnumerable<CompletionItem> Kinds(params ImmutableArray<KindCategory> categories) => Ordered(asked.Analysis.Library.Kinds
        .Where(kind => categories.Contains(kind.Category) && IsInSight(kind.Declared.Path))
        .Select(kind => (kind.Name, kind.Title)));

    private IEnumerable<CompletionItem> Procedures() => Ordered(asked.Analysis.Library.Procedures
        .Where(procedure => procedure.Machine.Name == _machine?.Name && IsInSight(procedure.Declared.Path))
        .DistinctBy(procedure => procedure.Declared)
        .Select(procedure => (procedure.Name, procedure.Title)));

    private IEnumerable<CompletionItem> Machines() => Ordered(asked.Analysis.Library.Machines
        .Where(machine => IsInSight(machine.Declared.Path))
        .DistinctBy(machine => machine.Declared)
        .Select(machine => (machine.Name, machine.Title)));

    private IEnumerable<CompletionItem> Declared(string sort) => Ordered(
        from path in asked.Analysis.Names.Reach(asked.Path)
        from declaration in asked.Analysis.Library.Trees[path].Root.Declarations.OfType<CatalogSyntax>()
        where declaration.Keyword.Text == sort
        select (declaration.Name.Text, declaration.Title?.Value ?? ""));

    private IEnumerable<CompletionItem> Verbs() => ActionTable.Rows
        .Where(row => row.Targets != ActionTargets.None && !row.IsInserted && row.Phase.HasFlag(place.Block == "refit" ? ActionPhase.Refit : ActionPhase.Strip)
            | (place.Block != "refit" && row.Phase.HasFlag(ActionPhase.Work)))
        .Select(row => new CompletionItem(row.Word, Keyword));

    /// <summary>What may follow the word that lets an alert stand one way only.</summary>
    private static IEnumerable<CompletionItem> OneWayAlerts() =>
        AlertSentences.BothWays.Select(sentence => new CompletionItem(sentence.Label, Keyword) { Detail = sentence.Detail });

    private bool IsInSight(string path) => asked.Analysis.Names.Reach(asked.Path).Contains(path);

    private static IEnumerable<CompletionItem> Ordered(IEnumerable<(string Name, string Detail)> choices) => choices.Select((choice, index) =>
        new CompletionItem(choice.Name, Reference) { Detail = choice.Detail, SortText = index.ToString("D5", System.Globalization.CultureInfo.InvariantCulture) });
}
