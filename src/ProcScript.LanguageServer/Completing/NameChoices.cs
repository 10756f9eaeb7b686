using System.Collections.Immutable;
using ProcScript.Analysis.Tools;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The names that fit where the grammar takes one.</summary>
/// <param name="here">What is known around the place.</param>
/// <param name="place">The place as the grammar sees it.</param>
internal sealed class NameChoices(Vicinity here, TypingPlace place)
{
    private readonly List<CompletionItem> _blocked = [];

    /// <summary>Whether only what seems to be meant is wanted: what is written without being asked for had better be right.</summary>
    public bool OnlyMeant { get; init; }

    private Asked Asked => here.Asked;
    private ItemNames Written => field ??= new ItemNames(here.Values);

    /// <summary>The machine as the step at hand finds it.</summary>
    public StepOutlook Outlook => field ??= new StepOutlook(
        here, place.Frames.FirstOrDefault(frame => frame.Rule is "step" or "refitRule") is { IsBegun: true, Start: var start } ? start : here.Offset, place.Block);

    /// <summary>The machine as a step would find it that begins here.</summary>
    public StepOutlook OutlookHere => field ??= new StepOutlook(here, here.Offset, place.Block);

    /// <summary>What would fit but cannot be done yet.</summary>
    public IEnumerable<CompletionItem> Blocked => _blocked;

    /// <summary>The names for a place of the grammar, those that most likely fit first.</summary>
    public IEnumerable<CompletionItem> For(NextWord next)
    {
        var frames = next.Frames.SkipWhile(frame => frame.Rule is "name" or "needState").ToImmutableArray();
        return frames[0].Rule switch
        {
            "reference" => References(frames[1], frames),
            "position" => Positions(frames[1]),
            "value" or "firstValues" => ValuesFor(frames),
            var rule => Names(rule, frames[0]),
        };
    }

    private IEnumerable<CompletionItem> Names(string rule, WritingFrame frame) => rule switch
    {
        "jointDeclaration" when frame.Words is [var verb, "by", _] => Kinds(verb),
        "cover" when frame.Words is [var verb, "by", _] => Kinds(verb),
        "procedureDeclaration" when frame.Words[^1] == "on" => Machines(),
        "forVariants" => Plain(here.Values.OptionsWithout(frame.Words)),
        "doCall" => Procedures(),
        "test" => Plain(here.Values.OfTest(frame.Words)),
        "eachMembers" or "eachItems" or "eachSteps" or "eachRules" when frame.Words is ["each"] => Plain(here.Values.LoopHeads()),
        _ => [],
    };

    private IEnumerable<CompletionItem> ValuesFor(ImmutableArray<WritingFrame> frames)
    {
        var words = frames[1].Words;
        return frames[1].Rule switch
        {
            "index" => Plain(here.Values.Within(frames[2].Words, frames[2].Words.IndexOf("["))),
            "doCall" => Plain(here.Values.Within(words, words.IndexOf("("))),
            "test" => Plain(here.Values.OfTest(words)),
            "values" when frames[2].Words is ["each", var variable, "in", ..] => Plain(here.Values.ForVariable(variable, words)),
            _ => [],
        };
    }

    private IEnumerable<CompletionItem> References(WritingFrame frame, ImmutableArray<WritingFrame> frames) => (frame.Rule, frame.Words) switch
    {
        ("jointDeclaration" or "cover", [.., "as"]) => TextChoices.JointName(Asked, frames, here.Machine),
        ("property", ["drive", ..]) => Declared("tool", tool => tool.Properties.Any(property => property is PropertySyntax { Keyword.Text: "size" })),
        ("property", ["tool", ..]) => Declared("tool"),
        ("property", ["certified", ..]) => Declared("certificate"),
        ("property", ["in", ..]) => [.. Places(), None("in no place")],
        ("property", ["hazard", ..]) => HazardWords.All.Where(word => !frame.Words.Contains(word)).Select(word => ChoiceList.Name(word, "")),
        ("property", ["after", ..]) => InMachine(item => item is Energy && !IsOwn(item)),
        ("property", ["renew", ..]) => [.. InMachine(item => item is Part or Joint && !IsOwn(item)), None("nothing disturbs it")],
        ("property", ["cap", ..]) => Declared("tool"),
        ("property", ["seals", ..]) => Declared("supply"),
        ("property", ["uses", .., "of"] or ["with", .., "of"]) => Declared("supply"),
        ("property", ["with", ..]) when place.Block == "fluid" => InMachine(item => item is Part or Joint),
        ("property", ["verify", .., "at"]) => InMachine(item => item is Joint or Part or Control),
        ("instruments", _) => Declared("tool", tool => Asked.Analysis.Library.Tools.Any(one => one.Name == tool.Name.Text && Measuring.Is(one))),
        ("clause" or "inlineClause", ["to", ..]) => InMachine(item => item is Part && item.Name != OwnPart?.Name),
        ("clause" or "inlineClause", ["on", ..]) => [.. InMachine(item => item is Energy), None("no energy")],
        ("clause" or "inlineClause", ["carries", ..]) => [.. InMachine(item => item is Fluid), None("no fluid")],
        ("hiders", _) => InMachine(item => item is Part part && !IsOwn(item) && (Own is not Part own || !part.IsWithin(own))),
        ("need", _) => Needed(frames),
        ("deed", _) => Targets(frames),
        ("goal", [_, var verb]) => Suited(verb, Outlook.BestMatching),
        ("orderRule" or "order", [.., var verb]) => Suited(verb, items => Outlook.DoneFirst(verb, items)),
        ("snugRule", _) => Suited("fasten", items => Outlook.DoneFirst("fasten", items)),
        ("retorqueRule", [.., var verb]) when frame.Words.Contains("before") || frame.Words.Contains("after") => Suited(verb, items => Outlook.DoneFirst(verb, items)),
        ("retorqueRule", _) => Suited("fasten", items => Outlook.DoneFirst("fasten", items)),
        ("discard", _) => Targets(frames),
        ("whileClause", _) => InMachine(item => item is Joint or Part),
        ("powerClause", _) => InMachine(item => item is Energy),
        _ => [],
    };

    /// <summary>What a condition may ask for: behind <c>aside</c> joints of the part, which need no state.</summary>
    private IEnumerable<CompletionItem> Needed(ImmutableArray<WritingFrame> frames) =>
        frames.Any(frame => frame is { Rule: "asideClause", IsBegun: true }) || (TypingPlace.Find([.. frames], "property") is { IsBegun: true, Start: var start } && place.Grammar.FollowsAside(start))
            ? [.. InMachine(item => item is Joint joint && joint.Owner.Name == OwnPart?.Name), .. InMachine(item => item.Name != OwnPart?.Name)]
            : InMachine(item => !IsOwn(item));

    /// <summary>What an item can be needed to be; null where it is not known.</summary>
    public IEnumerable<CompletionItem>? States(WritingFrame need) => Named(need.Words) switch
    {
        Control => [ChoiceList.Word("at", "a position")],
        Energy => Words(("isolated", "safe"), ("live", "there")),
        Fluid => Words(("empty", "let out"), ("full", "in")),
        Part => Words(("out", "off the machine"), ("aside", "out of the way"), ("fitted", "in its place"), ("supported", "propped")),
        Joint => Words(("off", "undone"), ("slack", "loosened"), ("fitted", "on")),

        // Nobody knows what it is yet.
        _ => null,
    };

    private static IEnumerable<CompletionItem> Words(params IEnumerable<(string Word, string Detail)> words) => words.Select(one => ChoiceList.Word(one.Word, one.Detail));

    private IEnumerable<CompletionItem> Positions(WritingFrame frame)
    {
        var end = frame.Words.LastIndexOf("at") is >= 0 and var at ? at : frame.Words.LastIndexOf("to");
        var start = Math.Max(frame.Words.LastIndexOf(",", end < 0 ? 0 : end), frame.Words.LastIndexOf("set", end < 0 ? 0 : end)) + 1;
        return end > start && Named(frame.Words[start..end]) is Control control
            ? control.Positions.Select((position, index) => ChoiceList.Name(position, index == 0 ? "home" : ""))
            : [];
    }

    /// <summary>What an action can be done to: what can be done here first; what cannot, with what blocks it, at the end of all.</summary>
    private IEnumerable<CompletionItem> Targets(ImmutableArray<WritingFrame> frames)
    {
        var verb = frames.First(frame => frame.Rule is "action" or "stripStep" or "discard").Words[0];
        var outlook = Outlook.Of(verb);
        _blocked.AddRange(Written.Of(outlook.Blocked.Select(one => (one.Item, $"not yet: {one.Why}"))));
        return Written.Of(outlook.Possible.Select(item => (item, Detail(item)))).Concat(Undeclared(verb));
    }

    private IEnumerable<CompletionItem> Suited(string verb, Func<IEnumerable<MachineItem>, IEnumerable<MachineItem>> order) =>
        Written.Of(order(Outlook.Targets(verb)).Select(item => (item, Detail(item)))).Concat(Undeclared(verb));

    private IEnumerable<CompletionItem> Undeclared(string verb) => here.UndeclaredFor(verb).Select(name => ChoiceList.Name(name, "not declared yet"));

    private IEnumerable<CompletionItem> InMachine(Func<MachineItem, bool> fits) => Written.Of(here.Mentions
        .LatestFirst((here.Machine?.Items.Values ?? []).Where(fits).OrderBy(item => item.Declared.Span.Start).ThenBy(item => item.Name, StringComparer.Ordinal), item => item.Name)
        .Select(item => (item, Detail(item))));

    /// <summary>The title, unless it only repeats the name, and what the item is like.</summary>
    private string Detail(MachineItem item)
    {
        var name = string.Join(' ', item.Name.Split(['_', '[', ',', ']'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
        return string.Join(", ", new[] { item.Title == name ? "" : item.Title, Outlook.Words(item) }.Where(words => words.Length > 0));
    }

    /// <summary>The item that the words name, in this variant of the machine or another. An index may stand for a variable; then any item of the family will do.</summary>
    private MachineItem? Named(ImmutableArray<string> words) => words is [var name, ..]
        ? Asked.Analysis.Library.Machines
            .Where(machine => machine.Declared == here.Machine?.Declared)
            .Select(machine => Named(machine, name, words.IndexOf("]") is > 0 and var end ? words[2..end].Where(word => word != ",") : []))
            .OfType<MachineItem>()
            .FirstOrDefault()
        : null;

    private static MachineItem? Named(Machine machine, string name, IEnumerable<string> index) =>
        machine.Items.GetValueOrDefault(CanonicalName.Of(name, index))
        ?? machine.Items.Values.OrderBy(item => item.Declared.Span.Start).FirstOrDefault(item => item.Name.StartsWith(name + "[", StringComparison.Ordinal));

    /// <summary>The item in whose declaration one types.</summary>
    private MachineItem? Own => TypingPlace.Find(place.Frames, "jointDeclaration", "energyDeclaration", "fluidDeclaration", "controlDeclaration", "partDeclaration") switch
    {
        { IsBegun: true, Rule: "jointDeclaration", Words: [_, _, _, _, _, .. var name] } => Named(name),
        { IsBegun: true, Rule: not "jointDeclaration", Words: [_, .. var name] } => Named(name),
        _ => null,
    };

    private MachineItem? OwnPart => place.Frames.FirstOrDefault(frame => frame is { Rule: "partDeclaration", IsBegun: true }) is { Words: [_, .. var name] } ? Named(name) : null;

    private bool IsOwn(MachineItem item) => Own is { } own && CanonicalName.Base(own.Name) == CanonicalName.Base(item.Name) && own.Declared == item.Declared;

    private IEnumerable<CompletionItem> Places() => Plain(here.Mentions.LatestFirst(here.Machine?.Places ?? [], area => area.Name)
        .Select(area => (area.Name, $"{area.Title}, room for {area.Room}")));

    private static CompletionItem None(string detail) => ChoiceList.Word("none", detail);

    private IEnumerable<CompletionItem> Kinds(string verb)
    {
        ImmutableArray<KindCategory> categories = verb switch
        {
            "held" => [KindCategory.Fastener, KindCategory.Clip, KindCategory.Bond],
            "wired" => [KindCategory.Connector],
            "piped" => [KindCategory.Line],
            "covered" => [KindCategory.Clip],
            _ => [KindCategory.Clip, KindCategory.Bond],
        };
        return Plain(here.Mentions.MostLikelyFirst(
            Asked.Analysis.Library.Kinds.Where(kind => categories.Contains(kind.Category) && IsInSight(kind.Declared.Path)), kind => kind.Name).Select(kind => (kind.Name, kind.Title)));
    }

    private IEnumerable<CompletionItem> Procedures()
    {
        var own = JobsInText.DeclarationAt(Asked, here.Offset)?.Name.Text;
        return Plain(Asked.Analysis.Library.Procedures
            .Where(procedure => procedure.Machine.Name == here.Machine?.Name && procedure.Name != own && IsInSight(procedure.Declared.Path))
            .DistinctBy(procedure => procedure.Declared)
            .Select(procedure => (procedure.Name, procedure.Title)));
    }

    private IEnumerable<CompletionItem> Machines() => Plain(here.Mentions.LatestFirst(
        Asked.Analysis.Library.Machines.Where(machine => IsInSight(machine.Declared.Path)).DistinctBy(machine => machine.Declared), machine => machine.Name)
        .Select(machine => (machine.Name, machine.Title)));

    /// <summary>What the catalog declares of a sort: first what seems to be meant, of that what is used most.</summary>
    private IEnumerable<CompletionItem> Declared(string sort, Func<CatalogSyntax, bool>? isMeant = null) => Plain(here.Mentions.MostLikelyFirst(
        from path in Asked.Analysis.Names.Reach(Asked.Path)
        from declaration in Asked.Analysis.Library.Trees[path].Root.Declarations.OfType<CatalogSyntax>()
        where declaration.Keyword.Text == sort
        select declaration,
        one => one.Name.Text)
        .Where(one => !OnlyMeant || isMeant?.Invoke(one) != false)
        .OrderByDescending(one => isMeant?.Invoke(one) ?? true)
        .Select(one => (one.Name.Text, one.Title?.Value ?? "")));

    private bool IsInSight(string path) => Asked.Analysis.Names.Reach(Asked.Path).Contains(path);

    private static IEnumerable<CompletionItem> Plain(IEnumerable<(string Name, string Detail)> choices) => choices.Select(choice => ChoiceList.Name(choice.Name, choice.Detail));
}
