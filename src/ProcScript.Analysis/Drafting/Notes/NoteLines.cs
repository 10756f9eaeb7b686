using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>A line of notes without its bullet or number.</summary>
/// <param name="Number">Its number in the file, counted from 1.</param>
/// <param name="Text">What it says.</param>
/// <param name="Heads">What it heads, if anything.</param>
internal sealed partial record NoteLine(int Number, string Text, NoteHeading Heads)
{
    /// <summary>What is longer is no step; it is taken as it stands.</summary>
    public const int Longest = 600;

    /// <summary>The lines that say something.</summary>
    public static ImmutableArray<NoteLine> Read(string notes)
    {
        var lines = ImmutableArray.CreateBuilder<WrittenLine>();
        var isBlank = false;
        foreach (var (index, raw) in notes.ReplaceLineEndings("\n").Split('\n').Index())
        {
            var line = Plain(raw);
            var bullet = line.Length > Longest ? "" : Bullet().Match(line).Value;
            var text = line[bullet.Length..].Trim();
            if (text.Any(char.IsLetterOrDigit))
            {
                lines.Add(new WrittenLine(index + 1, raw.Length - raw.TrimStart().Length, bullet.Trim(), text, line, isBlank));
            }
            else if (lines.Count > 0 && line.Length > 2 && line.All(letter => letter is '-' or '=' or '~' or '_'))
            {
                lines[^1] = lines[^1] with { IsUnderlined = true };
            }

            isBlank = !text.Any(char.IsLetterOrDigit);
            if (lines.Count > 0)
            {
                lines[^1] = lines[^1] with { IsBeforeBlank = isBlank };
            }
        }

        return NoteHeadings.Read(lines.ToImmutable());
    }

    /// <summary>Letters that nobody sees would be errors in the text that is made.</summary>
    private static string Plain(string raw)
    {
        var plain = new StringBuilder(raw.Length);
        foreach (var rune in raw.Normalize(NormalizationForm.FormC).EnumerateRunes())
        {
            var category = Rune.GetUnicodeCategory(rune);
            if (category is System.Globalization.UnicodeCategory.SpaceSeparator || rune.Value == '\t')
            {
                plain.Append(' ');
            }
            else if (category is not (System.Globalization.UnicodeCategory.Control or System.Globalization.UnicodeCategory.Format
                     or System.Globalization.UnicodeCategory.PrivateUse or System.Globalization.UnicodeCategory.OtherNotAssigned))
            {
                plain.Append(rune.Value switch
                {
                    '“' or '”' or '„' or '″' => "\"",
                    '‘' or '’' => "'",
                    _ => rune.ToString(),
                });
            }
        }

        return plain.ToString().Trim();
    }

    [GeneratedRegex(@"^(?:[-*•‣▪◦+>]+(?![-*])|!+(?=\s)|\[[ xX]?\]|\(?\d{1,3}[.)/:](?=\s)|\(?[a-zA-Z][.)](?=\s)|(?i:step)\s+\d{1,3}\s*[.:)-]?)(?:\s*(?:\[[ xX]?\]))?\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Bullet();
}
