using System.Collections.Immutable;
using Antlr4.Runtime;
using Antlr4.Runtime.Misc;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>What the kinds of tokens are called before an author. The grammar itself says what belongs together.</summary>
internal static class TokenNames
{
    private const int MostNamed = 6;
    private const int MostChoices = 4;

    // The rules of the grammar that an author knows by a name, the larger ones first; but names before all, since many a
    // word of the language may serve as one.
    private static readonly ImmutableArray<(int Rule, string Name)> Known =
    [
        (RULE_position, "a position"),
        (RULE_unitName, "a unit"),
        (RULE_value, "a name or a whole number"),
        (RULE_name, "a name"),
        (RULE_catalogDeclaration, "a catalog entry (such as `tool`)"),
        (RULE_step, "a step (such as `undo` or `warning`)"),
        (RULE_member, "a part, a joint or a property (such as `mass`)"),
        (RULE_procedureItem, "`goal`, `stage`, `do`, `work`, `refit`"),
        (RULE_refitRule, "a rule (such as `fit … after fit …`)"),
        (RULE_property, "a property (such as `tool`)"),
        (RULE_verb, "a verb (such as `undo`)"),
        (RULE_alert, "an alert (such as `warning`)"),
        (RULE_needState, "a state (such as `out`)"),
        (RULE_text, "a quoted text"),
        (RULE_number, "a number"),
    ];

    /// <summary>The tokens that a rule of the grammar may start with.</summary>
    public static IntervalSet FirstOf(int rule) => _ATN.NextTokens(_ATN.ruleToStartState[rule]);

    /// <summary>The word as it is written, or null for a kind that has many.</summary>
    public static string? Literal(int kind) => kind switch
    {
        PLUS_MINUS => "±",
        MIDDLE_DOT => "·",
        MINUS => "-",
        AT_MOST => "<=",
        AT_LEAST => ">=",
        _ => DefaultVocabulary.GetLiteralName(kind)?.Trim('\''),
    };

    /// <summary>Whether a kind is a word of the language that may not serve as a name.</summary>
    public static bool IsReserved(int kind) =>
        Literal(kind) is { } literal && char.IsAsciiLetter(literal[0]) && !FirstOf(RULE_name).Contains(kind);

    /// <summary>Tokens that would all do, in words: all of them where they are few.</summary>
    public static string DescribeChoice(IReadOnlyCollection<int> kinds)
    {
        var names = Names(kinds);
        return names.Count <= MostChoices ? Joined(names) : $"a word such as {names.Find(name => name.StartsWith('`'))}";
    }

    /// <summary>Tokens that may stand somewhere, in words: <c>a name, `{` or a quoted text</c>.</summary>
    public static string Describe(IReadOnlyCollection<int> kinds) => Joined(Names(kinds));

    private static List<string> Names(IReadOnlyCollection<int> kinds)
    {
        var left = Completed(kinds);
        var names = new List<string>();
        foreach (var (rule, name) in Known)
        {
            var first = FirstOf(rule).ToIntegerList();
            if (left.IsSupersetOf(first))
            {
                names.Add(name);
                left.ExceptWith(first);
            }
        }

        names.AddRange(left.Select(Name));
        return names;
    }

    private static string Joined(List<string> names) => names.Count switch
    {
        0 => "the end of the file",
        1 => names[0],
        > MostNamed => $"{string.Join(", ", names.Take(MostNamed))}, …",
        _ => $"{string.Join(", ", names.SkipLast(1))} or {names[^1]}",
    };

    // One kind may stand for others that an author does not tell from it.
    private static SortedSet<int> Completed(IReadOnlyCollection<int> kinds)
    {
        var completed = new SortedSet<int>(kinds);
        completed.Remove(TokenConstants.EOF);
        if (completed.Contains(NAME) && !completed.SetEquals([IN, NAME]))
        {
            completed.UnionWith(FirstOf(RULE_name).ToIntegerList());
        }

        if (completed.Contains(STRING))
        {
            completed.UnionWith(FirstOf(RULE_text).ToIntegerList());
        }

        if (completed.Contains(DECIMAL))
        {
            completed.UnionWith(FirstOf(RULE_number).ToIntegerList());
        }

        return completed;
    }

    private static string Name(int kind) => kind == SCREW_SIZE ? "a screw size (`#10`)" : Literal(kind) is { } literal ? $"`{literal}`" : "a whole number";
}
