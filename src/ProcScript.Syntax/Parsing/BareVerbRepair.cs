using System.Collections.Frozen;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Puts in the item that a verb alone on its line lacks, where the next line begins with a word that might be taken for its name: the slip is
/// then told where it was made.
/// </summary>
internal static class BareVerbRepair
{
    private static readonly FrozenSet<int> Verbs = TokenNames.FirstOf(RULE_actionVerb).ToIntegerList().ToFrozenSet();

    // Words that begin a step and may be names too.
    private static readonly FrozenSet<int> Steps = TokenNames.FirstOf(RULE_step).ToIntegerList().Intersect(TokenNames.FirstOf(RULE_name).ToIntegerList()).ToFrozenSet();

    /// <summary>The tokens with an empty name behind each such verb.</summary>
    public static List<Lexeme> Mend(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        List<Lexeme>? mended = null;
        for (var i = 0; i < lexemes.Count; i++)
        {
            mended?.Add(lexemes[i]);
            if (!IsBare(text, lexemes, i))
            {
                continue;
            }

            mended ??= lexemes[..(i + 1)];
            mended.Add(new Lexeme(NAME, lexemes[i].End, lexemes[i].End));
            if (log.TakesAnother())
            {
                log.Add(WordChanges.BareVerb(text, lexemes[i].Span, "a name"));
            }
        }

        return mended ?? lexemes;
    }

    private static bool IsBare(SourceText text, List<Lexeme> lexemes, int at)
    {
        return at + 2 < lexemes.Count && Verbs.Contains(lexemes[at].Kind) && Steps.Contains(lexemes[at + 1].Kind) && lexemes[at + 2].Kind is NAME or STRING
            && (at == 0 || Line(at - 1) < Line(at)) && Line(at) < Line(at + 1) && Line(at + 1) == Line(at + 2);

        int Line(int index) => text.LineAt(lexemes[index].Start);
    }
}
