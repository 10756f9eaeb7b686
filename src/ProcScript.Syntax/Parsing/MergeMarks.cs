using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>The lines with which a version control system parts two versions in a file.</summary>
/// <param name="First">The line before the first version.</param>
/// <param name="FirstEnd">Where the first version ends: at the middle line, or at that before the version both came from.</param>
/// <param name="Middle">The line between the versions.</param>
/// <param name="Last">The line behind the second version.</param>
internal sealed record MergeMarks(TextSpan First, int FirstEnd, TextSpan Middle, TextSpan Last)
{
    /// <summary>How many signs such a line begins with.</summary>
    public const int Length = 7;

    /// <summary>How many lines are looked through for the end of a merge.</summary>
    private const int MostLines = 1000;

    /// <summary>The marks of a merge that begins at a position; null where they are not all there.</summary>
    public static MergeMarks? Find(SourceText text, int position)
    {
        var line = text.LineAt(position);
        if (text.LineSpan(line).Start != position || !Begins(text, line, '<'))
        {
            return null;
        }

        int? firstEnd = null;
        TextSpan? middle = null;
        for (var next = line + 1; next < Math.Min(text.LineCount, line + MostLines); next++)
        {
            if (middle is null && (Begins(text, next, '|') || Begins(text, next, '=')))
            {
                firstEnd ??= text.LineSpan(next).Start;
                middle = Begins(text, next, '=') ? text.LineSpan(next) : null;
            }
            else if (middle is { } found && Begins(text, next, '>'))
            {
                return new MergeMarks(text.LineSpan(line), firstEnd!.Value, found, text.LineSpan(next));
            }
        }

        return null;
    }

    private static bool Begins(SourceText text, int line, char sign)
    {
        var span = text.LineSpan(line);
        return span.Length >= Length && text.Content.AsSpan(span.Start, Length).IndexOfAnyExcept(sign) < 0
            && (span.Length == Length || text.Content[span.Start + Length] is ' ' or '\r' or '\n');
    }
}
