using System.Security.Cryptography;
using System.Text;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reports;

/// <summary>Gives the findings of a file their fingerprints.</summary>
/// <param name="text">Its text; null where it could not be read.</param>
internal sealed class Fingerprints(SourceText? text)
{
    private const int KeyBytes = 16;

    private readonly Dictionary<string, int> _seen = new(StringComparer.Ordinal);

    /// <summary>The fingerprint of the next finding, in the order of the text.</summary>
    public Fingerprint Next(Finding finding)
    {
        var key = Key(finding);
        var ordinal = _seen.GetValueOrDefault(key) + 1;
        _seen[key] = ordinal;
        return new Fingerprint(key, ordinal);
    }

    private string Key(Finding finding)
    {
        var words = text is null ? "" : LineWords(text, text.LineAt(finding.Primary.Span.Start));
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes($"{finding.Rule.Code}\n{finding.Primary.Path}\n{words}"), hash);
        return Convert.ToHexStringLower(hash[..KeyBytes]);
    }

    /// <summary>The line with single blanks between its words and without a comment at its end.</summary>
    private static string LineWords(SourceText text, int line)
    {
        var span = text.LineSpan(line);
        var code = WithoutComment(text.Content.AsSpan(span.Start, span.Length));
        var words = new StringBuilder(code.Length);
        foreach (var letter in code)
        {
            if (!char.IsWhiteSpace(letter))
            {
                words.Append(letter);
            }
            else if (words.Length > 0 && words[^1] != ' ')
            {
                words.Append(' ');
            }
        }

        return words.ToString().TrimEnd();
    }

    private static ReadOnlySpan<char> WithoutComment(ReadOnlySpan<char> line)
    {
        var inText = false;
        for (var i = 0; i < line.Length; i++)
        {
            switch (line[i])
            {
                case '\\' when inText:
                    i++;
                    break;
                case '"':
                    inText = !inText;
                    break;
                case '/' when !inText && i > 0 && line[i..].StartsWith("//") && !line[..i].IsWhiteSpace():
                    return line[..i];
                default:
                    break;
            }
        }

        return line;
    }
}
