using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>What a line of notes heads.</summary>
internal enum NoteHeading
{
    /// <summary>Nothing: it says what is done.</summary>
    None,

    /// <summary>The lines below it.</summary>
    Lines,

    /// <summary>All of the notes.</summary>
    Notes,
}

/// <summary>A line as somebody wrote it.</summary>
/// <param name="Number">Its number in the file, counted from 1.</param>
/// <param name="Indent">How many characters stand before it.</param>
/// <param name="Bullet">Its bullet or number; empty where it has none.</param>
/// <param name="Text">What it says.</param>
/// <param name="Whole">All of it.</param>
/// <param name="IsBehindBlank">Whether an empty line stands before it.</param>
internal sealed record WrittenLine(int Number, int Indent, string Bullet, string Text, string Whole, bool IsBehindBlank)
{
    /// <summary>Whether an empty line stands behind it.</summary>
    public bool IsBeforeBlank { get; init; }

    /// <summary>Whether a line of dashes stands below it.</summary>
    public bool IsUnderlined { get; init; }
}

/// <summary>Tells headings from steps: by how they are marked, else by how they stand above the lines that they head.</summary>
internal static partial class NoteHeadings
{
    private const int LongestHeading = 80;
    private const int MostWords = 5;
    private const int MostWordsOfTitle = 10;

    /// <summary>The lines, each with what it heads.</summary>
    public static ImmutableArray<NoteLine> Read(ImmutableArray<WrittenLine> lines)
    {
        var isLowerCase = lines.Count(line => line.Text.Any(char.IsLower)) * 2 > lines.Length;
        var read = ImmutableArray.CreateBuilder<NoteLine>(lines.Length);
        for (var at = 0; at < lines.Length; at++)
        {
            var line = lines[at];
            var next = at + 1 < lines.Length ? lines[at + 1] : null;
            if (Marked(line) is { } marked)
            {
                read.Add(new NoteLine(line.Number, marked, at == 0 && line.IsUnderlined ? NoteHeading.Notes : NoteHeading.Lines));
            }
            else if (Before().Match(line.Text) is { Success: true } before && NoteVerbs.Of(before.Groups[1].Value) is { Act: NoteAct.PutBack })
            {
                // "INSTALLATION: reverse order" heads what follows on its own line.
                read.Add(new NoteLine(line.Number, before.Groups[1].Value, NoteHeading.Lines));
                read.Add(new NoteLine(line.Number, line.Text[before.Length..].Trim(), NoteHeading.None));
            }
            else
            {
                var heads = at == 0 && IsTitle(line, next) ? NoteHeading.Notes
                    : (isLowerCase && IsCapitals(line)) || IsAbove(line, next) ? NoteHeading.Lines
                    : NoteHeading.None;
                read.Add(new NoteLine(line.Number, line.Text, heads));
            }
        }

        return read.ToImmutable();
    }

    /// <summary>The text of a line that is marked as a heading; null for any other.</summary>
    private static string? Marked(WrittenLine line)
    {
        if (line.Text.Length >= LongestHeading || Listed().IsMatch(line.Text))
        {
            return null;
        }

        var text = Framed().Match(line.Whole) is { Success: true } framed ? framed.Groups["text"].Value
            : line.Whole.StartsWith('#') ? line.Whole.TrimStart('#')
            : line.Text.EndsWith(':') || line.IsUnderlined ? line.Text
            : null;
        return text?.Trim().TrimEnd(':').Trim() is { Length: > 0 } heading && heading.Any(char.IsLetterOrDigit) ? heading : null;
    }

    /// <summary>The first line, where it says what the notes are about.</summary>
    private static bool IsTitle(WrittenLine line, WrittenLine? next) =>
        next is not null && line.Bullet.Length == 0 && line.Text.Split(' ').Length <= MostWordsOfTitle && !IsSentence(line.Text)
        && (NoteVerbs.Of(line.Text) is null or { Act: NoteAct.Replace })
        && (line.IsBeforeBlank || IsNested(line, next));

    private static bool IsCapitals(WrittenLine line) =>
        line.Text.Count(char.IsLetter) > 3 && !line.Text.Any(char.IsLower) && line.Text.Split(' ').Length <= MostWords && !line.Text.Any(char.IsDigit)
        && NoteSentences.Warning(line.Text) is null;

    /// <summary>A few words without a verb above lines that stand further in, or have another sort of bullet.</summary>
    private static bool IsAbove(WrittenLine line, WrittenLine? next) =>
        next is not null && IsNested(line, next) && line.Text.Split(' ').Length <= MostWords && !line.Text.Any(char.IsDigit) && !IsSentence(line.Text)
        && NoteVerbs.Of(line.Text) is null && ItemSorts.OfWords(line.Text) is null;

    private static bool IsNested(WrittenLine line, WrittenLine next) =>
        next.Indent > line.Indent || (next.Bullet.Length > 0 && (line.Bullet.Length == 0 || char.IsLetterOrDigit(line.Bullet.Trim('(')[0]) != char.IsLetterOrDigit(next.Bullet.Trim('(')[0])));

    private static bool IsSentence(string text) => text[^1] is '.' or '!' or '?' or ',' || NoteVerbs.Trailing(text) is not null;

    [GeneratedRegex(@"^(?:=+(?<text>[^=]+)=+|\*\*(?<text>[^*]+)\*\*:?|--+\s(?<text>[^-].*?)\s--+|\[(?<text>[^\]xX ][^\]]+)\])$", RegexOptions.CultureInvariant)]
    private static partial Regex Framed();

    [GeneratedRegex(@"^([A-Z]{5,})\s*:\s*(?=\S)", RegexOptions.CultureInvariant)]
    private static partial Regex Before();

    [GeneratedRegex(@"^(?:job|machine|title|task)\s*:", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Listed();
}
