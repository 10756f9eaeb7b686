using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptLexer;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Finds the stages of a torque that look like a decimal number with a blank behind its comma: <c>torque 2, 5 N.m</c>. The text is read as it
/// stands; whoever means stages gives each its unit.
/// </summary>
internal static class StageCheck
{
    /// <summary>A stage that is so many times the one before is no usual one. Common practice, no source: a first stage is a third to a half.</summary>
    private const int MostTimes = 8;

    /// <summary>How many digits a fraction of a torque has at most.</summary>
    private const int MostDigits = 2;

    /// <summary>Reports them, all of a torque at once.</summary>
    public static void Report(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        for (var at = 0; at + 1 < lexemes.Count; at++)
        {
            if (lexemes[at].Kind != TORQUE || lexemes[at + 1].Kind != INTEGER)
            {
                continue;
            }

            var numbers = Doubtful(text, lexemes, at + 1);
            if (!numbers.IsEmpty && log.TakesAnother())
            {
                log.Add(CommaInNumber.At(text, numbers));
            }
        }
    }

    /// <summary>Whether two numbers with a comma between them look like one with a fraction.</summary>
    public static bool IsDoubtful(ReadOnlySpan<char> whole, ReadOnlySpan<char> fraction) =>
        fraction.Length <= MostDigits
        && int.TryParse(whole, NumberStyles.None, CultureInfo.InvariantCulture, out var before)
        && int.TryParse(fraction, NumberStyles.None, CultureInfo.InvariantCulture, out var behind)
        && (fraction.Length == 1 || fraction[0] == '0' || behind >= MostTimes * before);

    /// <summary>The unit behind a number, past its tolerance; empty where there is none.</summary>
    public static string UnitBehind(SourceText text, List<Lexeme> lexemes, int number)
    {
        var at = number + 1;
        if (at + 1 < lexemes.Count && lexemes[at].Kind == PLUS_MINUS)
        {
            at += IsNumber(lexemes, at + 3) && lexemes[at + 2].Kind == COMMA ? 4 : 2;
        }

        var end = at;
        while (end < lexemes.Count && lexemes[end].Kind is NAME or IN)
        {
            end++;
            if (end + 1 >= lexemes.Count || lexemes[end].Kind is not (DOT or MIDDLE_DOT) || lexemes[end + 1].Kind is not (NAME or IN))
            {
                break;
            }

            end++;
        }

        return end == at ? "" : text.Slice(TextSpan.FromBounds(lexemes[at].Start, lexemes[end - 1].End));
    }

    /// <summary>The doubtful numbers of a torque that begins with a number; none where it has more stages, or units between them.</summary>
    private static ImmutableArray<WrittenNumber> Doubtful(SourceText text, List<Lexeme> lexemes, int first)
    {
        var numbers = ImmutableArray.CreateBuilder<WrittenNumber>();
        var (at, isStage) = (first, true);
        if (HasTolerance(lexemes, first) && Pair(lexemes, first + 2) && !Rises(text, lexemes[first], lexemes[first + 4]))
        {
            (at, isStage) = (first + 2, false);
        }

        while (Pair(lexemes, at))
        {
            var (whole, fraction) = (text.Slice(lexemes[at].Span), text.Slice(lexemes[at + 2].Span));
            if (!IsDoubtful(whole, fraction))
            {
                return [];
            }

            numbers.Add(new WrittenNumber(
                TextSpan.FromBounds(lexemes[at].Start, lexemes[at + 2].End),
                [TextSpan.FromBounds(lexemes[at].End, lexemes[at + 2].Start)],
                isStage,
                IsDecimal: true,
                IsThousands: false)
            {
                Unit = isStage ? UnitBehind(text, lexemes, at + 2) : "",
            });
            at += 3;
            if (!isStage || !HasTolerance(lexemes, at - 1))
            {
                break;
            }

            (at, isStage) = (at + 1, false);
        }

        return at < lexemes.Count && lexemes[at].Kind == COMMA ? [] : numbers.ToImmutable();
    }

    private static bool Pair(List<Lexeme> lexemes, int at) => IsNumber(lexemes, at) && IsNumber(lexemes, at + 2) && lexemes[at + 1].Kind == COMMA;

    private static bool HasTolerance(List<Lexeme> lexemes, int number) => IsNumber(lexemes, number + 2) && lexemes[number + 1].Kind == PLUS_MINUS;

    private static bool Rises(SourceText text, Lexeme first, Lexeme second) =>
        int.TryParse(text.Slice(first.Span), NumberStyles.None, CultureInfo.InvariantCulture, out var before)
        && int.TryParse(text.Slice(second.Span), NumberStyles.None, CultureInfo.InvariantCulture, out var behind)
        && behind > before;

    private static bool IsNumber(List<Lexeme> lexemes, int at) => at < lexemes.Count && lexemes[at].Kind == INTEGER;
}
