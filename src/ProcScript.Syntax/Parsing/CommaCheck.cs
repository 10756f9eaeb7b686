using System.Collections.Immutable;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptLexer;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Tells a comma within a number from one between two. Where numbers are measured, digits on both sides of a comma without a blank behind it
/// are most likely one number as others write it; lists of names and counts have such commas too, and are let be.
/// </summary>
internal static class CommaCheck
{
    /// <summary>How far back the beginning of a list is looked for. A longer one is no figure anybody wrote.</summary>
    private const int LongestList = 200;

    /// <summary>How many commas one number has at most.</summary>
    private const int MostCommas = 16;

    /// <summary>Makes one number of what is written as one, and reports it: all of a line at once.</summary>
    public static void Mend(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        var first = FirstComma(lexemes);
        if (first == 0)
        {
            return;
        }

        var line = -1;
        List<WrittenNumber> found = [];

        // What lies before "end" is done; what is left moves up to it.
        var end = first;
        for (var next = first; next < lexemes.Count; next++)
        {
            lexemes[end++] = lexemes[next];
            var isSpaced = IsSpaced(lexemes, end - 1, next);
            if (!isSpaced && !IsComma(lexemes, next))
            {
                continue;
            }

            if (text.LineAt(lexemes[next].Start) != line)
            {
                Report(text, found, log);
                line = text.LineAt(lexemes[next].Start);
            }

            if (isSpaced)
            {
                var (whole, fraction) = (lexemes[end - 2], lexemes[next + 1]);
                found.Add(new WrittenNumber(
                    TextSpan.FromBounds(whole.Start, fraction.End), [TextSpan.FromBounds(whole.End, fraction.Start)], IsStage: false, IsDecimal: true, IsThousands: false));
                end--;
                next++;
                lexemes[end - 1] = new Lexeme(DECIMAL, whole.Start, fraction.End);
            }
            else if (IsPitch(lexemes, end - 1, lexemes[next + 1]))
            {
                found.Add(new WrittenNumber(TextSpan.FromBounds(lexemes[end - 2].Start, lexemes[next + 1].End), [lexemes[next].Span], IsStage: false, IsDecimal: true, IsThousands: false));
                lexemes[end - 1] = lexemes[next] with { Kind = DOT };
            }
            else if (lexemes[end - 2].Kind == INTEGER && !IsInList(lexemes, end - 2) && Read(text, lexemes, end - 2, next) is { } number)
            {
                found.Add(number);
                end--;
                next += (number.Commas.Length * 2) - 1;
                lexemes[end - 1] = new Lexeme(DECIMAL, number.Span.Start, number.Span.End);
            }
        }

        lexemes.RemoveRange(end, lexemes.Count - end);
        Report(text, found, log);
    }

    private static int FirstComma(List<Lexeme> lexemes)
    {
        for (var i = 1; i < lexemes.Count; i++)
        {
            if (IsComma(lexemes, i) || IsSpaced(lexemes, i, i))
            {
                return i;
            }
        }

        return 0;
    }

    /// <summary>Whether a comma has digits right behind it.</summary>
    private static bool IsComma(List<Lexeme> lexemes, int at) =>
        at > 0 && at + 1 < lexemes.Count && lexemes[at].Kind == COMMA && lexemes[at + 1].Kind is INTEGER or DECIMAL && lexemes[at].End == lexemes[at + 1].Start;

    /// <summary>Whether a comma stands between two numbers where only one can be: <c>mass 4, 5 kg</c>.</summary>
    /// <param name="lexemes">The lexemes; those before <paramref name="comma"/> are mended.</param>
    /// <param name="comma">Where the comma is now.</param>
    /// <param name="next">Where it was.</param>
    private static bool IsSpaced(List<Lexeme> lexemes, int comma, int next) =>
        comma > 1 && next + 2 < lexemes.Count
        && lexemes[comma].Kind == COMMA && lexemes[comma].End < lexemes[next + 1].Start
        && lexemes[comma - 1].Kind == INTEGER && lexemes[next + 1].Kind == INTEGER && lexemes[next + 2].Kind is NAME or PLUS_MINUS or RANGE or PERCENT or DEGREE
        && lexemes[comma - 2].Kind is MASS or LENGTH or CHARGE or WAIT or TIME or TAKES or ATTENDED or CURE or PREVAILING or REACH or HEIGHT or EXPECT or AT_MOST or AT_LEAST or LESS_THAN or MORE_THAN;

    // "M6x1,25": what stands before the comma is a name.
    private static bool IsPitch(List<Lexeme> lexemes, int comma, Lexeme digits) =>
        comma > 1 && lexemes[comma - 2].Kind == THREAD && lexemes[comma - 1].Kind == NAME
        && lexemes[comma - 1].End == lexemes[comma].Start && digits.Kind == INTEGER;

    /// <summary>The number whose first comma is given; null where these are several, with points of their own.</summary>
    private static WrittenNumber? Read(SourceText text, List<Lexeme> lexemes, int number, int comma)
    {
        var (start, before) = (lexemes[number], number > 0 ? lexemes[number - 1].Kind : LEFT_BRACE);
        var commas = ImmutableArray.CreateBuilder<TextSpan>();
        var isThousands = start.Span.Length <= 3;
        var last = comma - 1;
        while (commas.Count < MostCommas && IsComma(lexemes, last + 1))
        {
            commas.Add(TextSpan.FromBounds(last == comma - 1 ? start.End : lexemes[last].End, lexemes[last + 1].End));
            last += 2;
            var digits = text.Content.AsSpan(lexemes[last].Start, lexemes[last].Span.Length);
            var point = digits.IndexOf('.');
            isThousands &= (point < 0 ? digits.Length : point) == 3;
            if (point >= 0)
            {
                // Nothing comes behind a point, and before one only a comma for thousands.
                return isThousands ? Number(hasPoint: true) : null;
            }
        }

        return Number(hasPoint: false);

        WrittenNumber Number(bool hasPoint) =>
            new(TextSpan.FromBounds(start.Start, lexemes[last].End), commas.ToImmutable(), before is TORQUE or COMMA, commas.Count == 1 && !hasPoint, isThousands)
            {
                // With a blank alone behind the comma it would be read in two ways still.
                Unit = commas.Count == 1 && StageCheck.IsDoubtful(text.Slice(start.Span), text.Slice(lexemes[last].Span)) ? StageCheck.UnitBehind(text, lexemes, last) : "",
            };
    }

    /// <summary>Whether a number is one of a list of values, indices or positions: what opens such a list stands before it.</summary>
    private static bool IsInList(List<Lexeme> lexemes, int number)
    {
        for (var i = number - 1; i >= Math.Max(0, number - LongestList); i--)
        {
            switch (lexemes[i].Kind)
            {
                case LEFT_BRACKET or LEFT_PAREN or LEFT_BRACE:
                    return true;
                case IN when i > 0 && lexemes[i - 1].Kind is not (DOT or MIDDLE_DOT or SLASH or INTEGER or DECIMAL):
                    return true;
                case INTEGER or DECIMAL or COMMA or RANGE or NAME or IN or DOT or MIDDLE_DOT or SLASH:
                    break;
                default:
                    // A position may be a word of the language: "{ on, off, 1,2 }".
                    if (lexemes[i + 1].Kind != COMMA)
                    {
                        return false;
                    }

                    break;
            }
        }

        return number > LongestList;
    }

    private static void Report(SourceText text, List<WrittenNumber> found, FindingLog log)
    {
        // The same slip twice on a line is one, unless what is meant differs.
        IEnumerable<IEnumerable<WrittenNumber>> alike = found.TrueForAll(number => number.IsDecimal) ? [found] : found.Select(number => (WrittenNumber[])[number]);
        foreach (var numbers in alike.Where(numbers => numbers.Any() && log.TakesAnother()))
        {
            log.Add(CommaInNumber.At(text, [.. numbers]));
        }

        found.Clear();
    }
}

/// <summary>A number with commas in it.</summary>
/// <param name="Span">The whole of it.</param>
/// <param name="Commas">The commas, each with the blanks before it.</param>
/// <param name="IsStage">Whether it stands where several numbers may, with commas between them: the stages of a torque.</param>
/// <param name="IsDecimal">Whether it may be a decimal number: it has one comma and no point.</param>
/// <param name="IsThousands">Whether its digits are in groups as those of thousands.</param>
internal sealed record WrittenNumber(TextSpan Span, ImmutableArray<TextSpan> Commas, bool IsStage, bool IsDecimal, bool IsThousands)
{
    /// <summary>The unit that a stage before the comma needs, for a reader not to take the comma for a point; empty where nobody would.</summary>
    public string Unit { get; init; } = "";
}
