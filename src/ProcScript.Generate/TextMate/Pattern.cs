using System.Text.Json.Nodes;

namespace ProcScript.Generate.TextMate;

/// <summary>The patterns of a TextMate grammar, as JSON.</summary>
internal static class Pattern
{
    /// <summary>All of a match has one scope.</summary>
    public static JsonObject Plain(string match, string scope) => new() { ["name"] = scope, ["match"] = match };

    /// <summary>A sentence on one line: each of its groups, from the first, has a scope or, behind a <c>#</c>, patterns of its own.</summary>
    public static JsonObject Sentence(string match, params IReadOnlyList<string> captures) => new()
    {
        ["match"] = match,
        ["captures"] = Captures(captures),
    };

    /// <summary>From one sign to another, over lines.</summary>
    public static JsonObject Region(string begin, IReadOnlyList<string> beginCaptures, string end, string endScope, params IReadOnlyList<string> includes) => new()
    {
        ["begin"] = begin,
        ["beginCaptures"] = Captures(beginCaptures),
        ["end"] = end,
        ["endCaptures"] = new JsonObject { ["0"] = new JsonObject { ["name"] = endScope } },
        ["patterns"] = Includes(includes),
    };

    /// <summary>Several patterns under one name.</summary>
    public static JsonObject Group(params IReadOnlyList<JsonObject> patterns) => new() { ["patterns"] = new JsonArray([.. patterns]) };

    /// <summary>References to patterns by name.</summary>
    public static JsonArray Includes(params IEnumerable<string> names) =>
        new([.. names.Select(name => new JsonObject { ["include"] = name })]);

    private static JsonObject Captures(IReadOnlyList<string> captures)
    {
        JsonObject json = [];
        for (var i = 0; i < captures.Count; i++)
        {
            json[$"{i + 1}"] = captures[i].StartsWith('#')
                ? new JsonObject { ["patterns"] = Includes(captures[i]) }
                : new JsonObject { ["name"] = captures[i] };
        }

        return json;
    }
}
