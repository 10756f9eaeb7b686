using Antlr4.Runtime.Atn;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>How a sentence goes on from a state of the grammar, written out: <c>as name</c>, <c>[at "…"]</c>.</summary>
internal static class SentenceForm
{
    private const int MostChoices = 5;
    private const int Deepest = 4;

    /// <summary>The parts that may still come before a rule is at its end.</summary>
    public static List<string> From(ATNState state) => From(state, stop: null, depth: 0);

    private static List<string> From(ATNState state, ATNState? stop, int depth)
    {
        var parts = new List<string>();
        while (state != stop && state is not RuleStopState)
        {
            state = Next(state, parts, depth);
        }

        return parts;
    }

    private static ATNState Next(ATNState state, List<string> parts, int depth)
    {
        switch (state)
        {
            case StarLoopEntryState or PlusLoopbackState:
                var (loop, exit) = state.Transition(0).target is LoopEndState ? (state.Transition(1).target, state.Transition(0).target) : (state.Transition(0).target, state.Transition(1).target);
                Add(parts, Choice((BlockStartState)loop, depth), isOptional: true, repeats: true);
                return exit;
            case BlockStartState block:
                Add(parts, Choice(block, depth), IsOptional(block), repeats: false);
                return block.endState;
            default:
                var transition = state.Transition(0);
                if (transition is RuleTransition rule)
                {
                    // An index belongs to its name.
                    if (rule.ruleIndex == RULE_index)
                    {
                        return rule.followState;
                    }

                    Add(parts, Named(rule.ruleIndex) is { } name ? [name] : From(rule.target, null, depth + 1), isOptional: false, repeats: false);
                    return rule.followState;
                }

                if (!transition.IsEpsilon)
                {
                    parts.Add(Token(transition));
                }

                return transition.target;
        }
    }

    private static void Add(List<string> parts, List<string> more, bool isOptional, bool repeats)
    {
        if (more.Count == 0)
        {
            return;
        }

        if (!isOptional && !repeats)
        {
            parts.AddRange(more);
            return;
        }

        // One more of what stands before, behind a comma.
        var words = more is [['(', .., ')'] only] ? only[1..^1] : string.Join(' ', more);
        parts.Add(repeats && words.StartsWith(", ", StringComparison.Ordinal) ? "[, …]" : repeats ? $"[{words}]…" : $"[{words}]");
    }

    /// <summary>The alternatives of a block as one part, or the parts of its only one.</summary>
    private static List<string> Choice(BlockStartState block, int depth)
    {
        if (depth > Deepest)
        {
            return ["…"];
        }

        var alternatives = Enumerable.Range(0, block.NumberOfTransitions)
            .Select(i => From(block.Transition(i).target, block.endState, depth + 1))
            .Where(parts => parts.Count > 0)
            .ToList();
        return alternatives switch
        {
            [] => [],
            [var only] => only,
            { Count: > MostChoices } => ["…"],
            _ => [$"{(IsOptional(block) ? "" : "(")}{string.Join(" | ", alternatives.Select(parts => string.Join(' ', parts)))}{(IsOptional(block) ? "" : ")")}"],
        };
    }

    private static bool IsOptional(BlockStartState block) =>
        Enumerable.Range(0, block.NumberOfTransitions).Any(i => From(block.Transition(i).target, block.endState, Deepest + 1).Count == 0);

    private static string Token(Transition transition)
    {
        var kinds = transition.Label.ToIntegerList();
        return kinds is [var only] ? Word(only) : kinds.Count > MostChoices ? "…" : string.Join('|', kinds.Select(Word).Distinct());
    }

    private static string Word(int kind) => TokenNames.Literal(kind) ?? (kind is STRING or UNCLOSED_STRING ? "\"…\"" : kind is INTEGER ? "number" : "name");

    /// <summary>What people call what a rule stands for; null for one that is written out.</summary>
    private static string? Named(int rule) => rule switch
    {
        RULE_name or RULE_reference => "name",
        RULE_text => "\"…\"",
        RULE_count => "count",
        RULE_quantity => "figure",
        RULE_limit => "limit",
        RULE_position => "position",
        RULE_value => "value",
        RULE_values or RULE_firstValues => "values",
        RULE_unit or RULE_unitName => "unit",
        RULE_number => "number",
        RULE_needs => "conditions",
        RULE_hiders => "parts",
        RULE_test => "condition",
        RULE_verb or RULE_actionVerb or RULE_orderVerb or RULE_snugVerb => "verb",
        RULE_needState => "state",
        _ => Blocks.SentencesOf(rule).IsEmpty ? null : "{ … }",
    };
}
