using System.Text.Json.Nodes;
using static ProcScript.Generate.TextMate.Expression;

namespace ProcScript.Generate.TextMate;

/// <summary>
/// The sentences of the language as patterns. An editor matches these line by line and takes the leftmost match, of several the
/// first here; so a sentence takes its names along, and a word that may be a name too is a name where one is due. A sentence that
/// is broken over lines is coloured word by word.
/// </summary>
/// <param name="groups">The words by what they do.</param>
internal sealed class TextMateSentences(WordGroups groups)
{
    /// <summary>The mark of a left-hand thread.</summary>
    private const string Hand = @"(?:(?:\s*-\s*|\s+)LH\b)?";

    private readonly Expression _expression = new(groups);

    /// <summary>Every pattern by its name.</summary>
    public JsonObject Repository() => new()
    {
        ["declaration"] = Declaration(),
        ["within"] = new JsonObject
        {
            ["patterns"] = Pattern.Includes(
                "#comment", "#text", "#choice", "#block", "#parentheses", "#index", "#joint", "#member", "#flow", "#property", "#action",
                "#condition", "#names", "#figure", "#word", "#name", "#sign"),
        },
        ["comment"] = Comment(),
        ["text"] = Text(),
        ["choice"] = Choice(),
        ["block"] = Pattern.Region(@"(\{)", [Scope.Bracket], @"\}", Scope.Bracket, "#within"),
        ["parentheses"] = Pattern.Region(@"(\()", [Scope.Bracket], @"\)", Scope.Bracket, "#comment", "#parameter", "#values"),
        ["parameter"] = Pattern.Sentence(
            $"({_expression.Name}){Space}({Word("in")})", Scope.Variable, Scope.Flow),
        ["index"] = Pattern.Region(@"(\[)", [Scope.Bracket], @"\]", Scope.Bracket, "#values"),
        ["joint"] = Joint(),
        ["member"] = Pattern.Sentence(
            $"({Word(groups.Members)}){Space}({_expression.Name})", Scope.Declaration, Scope.DeclaredItem),
        ["flow"] = Flow(),
        ["property"] = Property(),
        ["action"] = Action(),
        ["condition"] = Condition(),
        ["names"] = Pattern.Sentence(
            $"({Word([.. groups.BeforeNames, "of"])}){Space}({_expression.References})", "#word", "#references"),
        ["references"] = Pattern.Group(
            Pattern.Region(@"(\[)", [Scope.Bracket], @"\]", Scope.Bracket, "#values"),
            Pattern.Plain(_expression.Name, Scope.Item),
            Pattern.Plain(",", Scope.Comma)),
        ["values"] = Pattern.Group(
            Pattern.Plain(Integer, Scope.Number),
            Pattern.Plain(_expression.Position, Scope.Value),
            Pattern.Plain(@"\.\.", Scope.Operator),
            Pattern.Plain(",", Scope.Comma)),
        ["figure"] = Figure(),
        ["word"] = LoneWord(),
        ["name"] = Pattern.Plain(_expression.Name, Scope.Item),
        ["sign"] = Pattern.Group(
            Pattern.Plain(@"±|\+-|\+|\.\.|<=|>=|[<>≤≥]", Scope.Operator),
            Pattern.Plain("[.·⋅/°%−-]", Scope.Operator),
            Pattern.Plain(",", Scope.Comma),
            Pattern.Plain(@"[\]})]", Scope.Bracket),
            Pattern.Plain(@"[^\s]", Scope.Unknown)),
    };

    private JsonObject Declaration() => Pattern.Sentence(
        $"({Word(groups.Declarations)}){Space}({_expression.Name})", Scope.Declaration, Scope.DeclaredName);

    private static JsonObject Comment() => new()
    {
        ["name"] = Scope.Comment,
        ["match"] = @"//\s*(proc:)\s*(allow)\s+([\w-]+)(?:\s+(until)\s+([\w-]+))?(?:\s+(because)\s+(""(?:\\.|[^""\\])*""))?.*|//.*",
        ["captures"] = new JsonObject
        {
            ["1"] = new JsonObject { ["name"] = Scope.Suppression },
            ["2"] = new JsonObject { ["name"] = Scope.Suppression },
            ["3"] = new JsonObject { ["name"] = Scope.Rule },
            ["4"] = new JsonObject { ["name"] = Scope.Suppression },
            ["5"] = new JsonObject { ["name"] = Scope.Date },
            ["6"] = new JsonObject { ["name"] = Scope.Suppression },
            ["7"] = new JsonObject { ["name"] = Scope.Text },
        },
    };

    private static JsonObject Text() => new()
    {
        ["name"] = Scope.Text,
        ["begin"] = "\"",
        ["end"] = "\"|$",
        ["patterns"] = new JsonArray(
            Pattern.Plain(@"\\.", Scope.Escape),
            Pattern.Plain(@"\{[\p{L}_][\p{L}_0-9]*\}", Scope.Placeholder)),
    };

    /// <summary>A control's block begins with its positions, and these may be words that elsewhere begin a sentence.</summary>
    private JsonObject Choice() => Pattern.Region(
        $@"(\{{)\s*({List(_expression.Position, "+")})", [Scope.Bracket, "#values"], @"\}", Scope.Bracket, "#within");

    private JsonObject Joint() => Pattern.Sentence(
        $"({Word(groups.Joints)}){Space}({Word("by")}){Space}({Integer}){Space}({_expression.Name}){Space}({Word("as")}){Space}({_expression.Name})",
        Scope.Joint,
        Scope.Joint,
        Scope.Number,
        Scope.Kind,
        Scope.Joint,
        Scope.DeclaredItem);

    private JsonObject Flow() => Pattern.Group(
        Pattern.Sentence(
            $"({Word("each")}){Space}({_expression.Name}){Space}({Word("in")}){Space}({_expression.Values})",
            Scope.Flow,
            Scope.Variable,
            Scope.Flow,
            "#values"),
        Pattern.Sentence(
            $"({Word("when")}){Space}({Word("not")}){Space}({_expression.Name})", Scope.Flow, Scope.Flow, Scope.Variable),
        Pattern.Sentence(
            $"({Word("when")}){Space}({_expression.Name}){Space}({Word("is")})(?:{Space}({Word("not")}))?{Space}({_expression.Value})",
            Scope.Flow,
            Scope.Variable,
            Scope.Flow,
            Scope.Flow,
            "#values"),
        Pattern.Sentence($"({Word("when")}){Space}({_expression.Name})", Scope.Flow, Scope.Variable),
        Pattern.Sentence(
            $"({Word("goal")}){Space}({Word(groups.Verbs)}){Space}({_expression.Name})", Scope.Flow, Scope.Action, Scope.Item),
        Pattern.Sentence($"({Word("in")}){Space}({Word("background")})", Scope.Sentence, Scope.Sentence));

    /// <summary>Properties whose value is a name of no item, or a figure without a unit; and those that share a word with an action.</summary>
    private JsonObject Property() => Pattern.Group(
        Pattern.Plain($@"{Word(groups.TextActions)}(?=\s*"")", Scope.Action),
        Pattern.Plain($@"{Word(groups.Alerts)}(?=\s*"")", Scope.Alert),
        Pattern.Plain($@"{Word(groups.TextProperties)}(?=\s*"")", Scope.Property),
        Pattern.Sentence($"({Word("thread")}){Space}({Word("locker")})", Scope.Property, Scope.Property),
        Pattern.Sentence(
            $@"({Word("thread")}){Space}((?:#[0-9]+|[0-9]+(?:(?:\s+[0-9]+)?/[0-9]+)?)-[0-9]+(?:\.[0-9]+)?(?:\s+{_expression.PlainName})?{Hand}"
                + $@"|{_expression.PlainName}(?:\.[0-9]+)?{Hand})",
            Scope.Property,
            Scope.Mark),
        Pattern.Sentence($"({Word("grade")}){Space}({Number}|{Word("unknown")}|{_expression.PlainName}(?:-[0-9]+)?)", Scope.Property, Scope.Mark),
        Pattern.Sentence($"({Word("people")}){Space}({Integer})", Scope.Property, Scope.Number),
        Pattern.Sentence(
            $"({Word("seals", "cap")}){Space}({Integer}){Space}({_expression.Name})", Scope.Property, Scope.Number, Scope.Item),
        Pattern.Sentence($"({Word("single")}){Space}({Word("use")})", Scope.Property, Scope.Property),
        Pattern.Sentence($"({Word("keep")}){Space}({Word("in")}){Space}({Word("order")})", Scope.Property, Scope.Property, Scope.Property),
        Pattern.Sentence($"({Word("reuse")}){Space}({Word("because")})", Scope.Property, Scope.Property),
        Pattern.Sentence(
            $"({Word("pattern")}){Space}(?:({Word("inside")}){Space}({Word("out")})|({Word(groups.Values)}))",
            Scope.Property,
            Scope.Value,
            Scope.Value,
            Scope.Value),
        Pattern.Sentence($"({Word("grip")}){Space}({Word(groups.Values)})", Scope.Property, Scope.Value),
        Pattern.Sentence(
            $"({Word("with")}){Space}({_expression.References}){Space}({Word("add", "take")})", Scope.Property, "#references", Scope.Property),
        Pattern.Sentence(
            $@"({Word("renew")}){Space}({Word("with")}){Space}({Word("none")})(?!\s*\[)", Scope.Property, Scope.Property, Scope.Value),
        Pattern.Sentence($@"({Word("on", "carries")}){Space}({Word("none")})(?!\s*\[)", Scope.Sentence, Scope.Value),
        Pattern.Sentence(
            $"({Word("renew")}){Space}({Word("with")}){Space}({_expression.References})", Scope.Property, Scope.Property, "#references"),
        Pattern.Sentence(
            $@"({Word("voltage")}){Space}({Number})\s*({_expression.Unit}){Space}({Word(groups.Currents)})",
            Scope.Property,
            Scope.Number,
            Scope.Unit,
            Scope.Value),
        Pattern.Sentence($"({Word("at")}){Space}({_expression.Reference})", Scope.Sentence, "#references"),
        Pattern.Sentence(
            $"({Word("while")}){Space}({_expression.References}){Space}({Word("open")})", Scope.Sentence, "#references", Scope.Sentence),
        Pattern.Sentence($"({Word("strip", "refit")}){Space}({Word("needs")})", Scope.Sentence, Scope.Sentence),
        Pattern.Sentence($"({Word("way")}){Space}({Word("needs")})", Scope.Property, Scope.Sentence),
        Pattern.Sentence($"({Word("way")}){Space}({Word("behind")}){Space}({_expression.References})", Scope.Property, Scope.Property, "#references"),
        Pattern.Sentence($"({Word("where")}){Space}({Word("needed")})", Scope.Sentence, Scope.Sentence),
        Pattern.Sentence($"({Word("strip", "refit")}){Space}({Word(groups.Alerts)})", Scope.Sentence, Scope.Alert),
        Pattern.Plain($"{Word("before", "after")}(?={Space}(?:{Word(groups.Verbs)}|\"))", Scope.Sentence),
        Pattern.Plain($"{Word(groups.Properties.Except(groups.Verbs))}(?={Space}[0-9−-])", Scope.Property));

    private JsonObject Action() => Pattern.Group(
        Pattern.Sentence(
            $"({Word("set")}){Space}({_expression.Reference}){Space}({Word("to")}){Space}({_expression.Position})",
            Scope.Action,
            "#references",
            Scope.Sentence,
            "#values"),
        Pattern.Sentence(
            $"({Word(groups.Verbs)}){Space}(?:({Integer})|({Word("rest")})){Space}({Word("of")}){Space}({_expression.Name})",
            Scope.Action,
            Scope.Number,
            Scope.Sentence,
            Scope.Sentence,
            Scope.Item),
        Pattern.Sentence(
            $"({Word(groups.Verbs)}){Space}({Integer}){Space}({_expression.Name}){Space}({_expression.Name})",
            Scope.Action,
            Scope.Number,
            Scope.Kind,
            Scope.Item),
        Pattern.Sentence(
            $"({Word([.. groups.Verbs, "discard"])}){Space}({_expression.Name})", Scope.Action, Scope.Item));

    /// <summary>Conditions: an item and what it is, or where it stands. A state with a text behind it is a property.</summary>
    private JsonObject Condition() => Pattern.Group(
        Pattern.Sentence(
            $@"({Word("or")}){Space}({_expression.Reference}){Space}({Word(groups.States)})(?!\s*"")", Scope.Sentence, "#references", Scope.State),
        Pattern.Sentence(
            $"({Word("or")}){Space}({_expression.Reference}){Space}({Word("at")}){Space}({_expression.Position})",
            Scope.Sentence,
            "#references",
            Scope.Sentence,
            "#values"),
        Pattern.Sentence($"({Word("or")}){Space}({_expression.References})", Scope.Sentence, "#references"),
        Pattern.Sentence(
            $@"({_expression.Reference}){Space}({Word(groups.States)})(?!\s*"")", "#references", Scope.State),
        Pattern.Sentence(
            $"({_expression.Reference}){Space}({Word("at")}){Space}({_expression.Position})", "#references", Scope.Sentence, "#values"));

    private JsonObject Figure() => Pattern.Sentence($@"([-−]?{Number})(?:\s*({_expression.Unit}))?", Scope.Number, Scope.Unit);

    private JsonObject LoneWord() => Pattern.Group([.. groups.Alone.Select(group => Pattern.Plain(Word(group.Words), group.Scope))]);
}
