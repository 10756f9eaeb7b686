using System.Collections.Frozen;
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
    private static readonly FrozenSet<int> Verbs = TokenNames.FirstOf(RULE_actionVerb).Or(TokenNames.FirstOf(RULE_snugVerb)).ToIntegerList().ToFrozenSet();
    private static readonly FrozenSet<int> Names = TokenNames.FirstOf(RULE_name).ToIntegerList().ToFrozenSet();

    /// <summary>The tokens with what was forgotten, which is told.</summary>
    public static List<Lexeme> Mend(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        List<Lexeme>? mended = null;
        for (var at = 0; at < lexemes.Count; at++)
        {
            if (at > 1 && IsForgotten(lexemes, at) && !log.HasFindingOnLineOf(lexemes[at].Start) && log.TakesAnother())
            {
                var name = lexemes[at].Span;
                log.Add(UnexpectedText.MissingBefore(text, name, TokenNames.DescribeChoice([OF]), TokenNames.Literal(OF)));
                mended ??= lexemes[..at];
                mended.Add(new Lexeme(OF, name.Start, name.Start));
            }

            mended?.Add(lexemes[at]);
        }

        return mended ?? lexemes;
    }

    private static bool IsForgotten(List<Lexeme> lexemes, int name) =>
        lexemes[name - 1].Kind == INTEGER && Verbs.Contains(lexemes[name - 2].Kind) && Names.Contains(lexemes[name].Kind)
        && !(name + 1 < lexemes.Count && Names.Contains(lexemes[name + 1].Kind));
}
