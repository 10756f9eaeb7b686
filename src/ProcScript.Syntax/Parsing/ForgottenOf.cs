using Antlr4.Runtime.Misc;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Puts in the <c>of</c> of <c>undo 2 bolts</c>. The parser would take <c>bolts</c> for a kind, as in <c>undo 2 m8 bolts</c>, and miss the joint
/// behind it; nobody forgets that, and many forget the <c>of</c>.
/// </summary>
internal static class ForgottenOf
{
    private static readonly IntervalSet Verbs = First(RULE_actionVerb).Or(First(RULE_snugVerb));
    private static readonly IntervalSet Names = First(RULE_name);

    /// <summary>The tokens with what was forgotten, which is told.</summary>
    public static List<Lexeme> Mend(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        for (var at = 0; at + 2 < lexemes.Count; at++)
        {
            if (lexemes[at + 1].Kind == INTEGER && Verbs.Contains(lexemes[at].Kind) && Names.Contains(lexemes[at + 2].Kind)
                && !(at + 3 < lexemes.Count && Names.Contains(lexemes[at + 3].Kind))
                && !log.HasFindingOnLineOf(lexemes[at + 2].Start) && log.TakesAnother())
            {
                var name = lexemes[at + 2].Span;
                log.Add(UnexpectedText.MissingBefore(text, name, TokenNames.DescribeChoice([OF]), TokenNames.Literal(OF)));
                lexemes.Insert(at + 2, new Lexeme(OF, name.Start, name.Start));
            }
        }

        return lexemes;
    }

    private static IntervalSet First(int rule) => _ATN.NextTokens(_ATN.ruleToStartState[rule]);
}
