using System.Collections.Immutable;
using Antlr4.Runtime;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Which sentences the blocks of the grammar hold. A block is named by its rule; the file counts as one.</summary>
internal static class Blocks
{
    private static readonly ImmutableArray<ImmutableArray<bool>> StartingKinds =
        [.. Enumerable.Range(0, ruleNames.Length).Select(StartsIn)];

    /// <summary>The rules of the sentences that a block holds; none for a rule that is no block.</summary>
    public static ReadOnlySpan<int> SentencesOf(int block) => block switch
    {
        RULE_file => [RULE_useDirective, RULE_catalogDeclaration, RULE_machineDeclaration, RULE_procedureDeclaration],
        RULE_propertyBlock or RULE_controlBlock => [RULE_property, RULE_clause, RULE_refitProperty, RULE_whenProperties],
        RULE_memberBlock => [RULE_member],
        RULE_procedureBlock => [RULE_procedureItem],
        RULE_stepBlock => [RULE_step],
        RULE_ruleBlock => [RULE_refitRule],
        RULE_testBlock => [RULE_testItem],
        _ => [],
    };

    /// <summary>Whether a rule is a sentence of some block.</summary>
    public static bool IsSentence(int rule) => rule
        is RULE_useDirective or RULE_catalogDeclaration or RULE_machineDeclaration or RULE_procedureDeclaration
        or RULE_property or RULE_clause or RULE_refitProperty or RULE_whenProperties or RULE_member or RULE_procedureItem or RULE_step or RULE_refitRule
        or RULE_testItem;

    /// <summary>Whether a sentence of the block may start with a token of the kind.</summary>
    public static bool StartsSentence(int block, int kind) => kind >= 0 && StartingKinds[block][kind];

    /// <summary>Whether the parser is inside a block there. One without children is without its brace still.</summary>
    public static bool IsBlock(RuleContext context) => context.ChildCount > 0 && !SentencesOf(context.RuleIndex).IsEmpty;

    /// <summary>The innermost block that the parser is in.</summary>
    public static int Around(RuleContext context)
    {
        for (var around = context; around is not null; around = around.Parent)
        {
            if (IsBlock(around))
            {
                return around.RuleIndex;
            }
        }

        return RULE_file;
    }

    private static ImmutableArray<bool> StartsIn(int block)
    {
        var starts = new bool[_ATN.maxTokenType + 1];
        foreach (var rule in SentencesOf(block))
        {
            foreach (var kind in TokenNames.FirstOf(rule).ToIntegerList())
            {
                starts[kind] = true;
            }
        }

        return [.. starts];
    }
}
