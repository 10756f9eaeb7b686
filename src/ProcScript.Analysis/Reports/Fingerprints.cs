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

    // A line may be as long as its file, and have a finding at each of its words.
    private readonly Dictionary<(string Code, string Path, int Line), string> _keys = [];
    private readonly Dictionary<int, string> _words = [];
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
        var line = text?.LineAt(finding.Primary.Span.Start) ?? -1;
        var place = (finding.Rule.Code, finding.Primary.Path, line);
        if (_keys.TryGetValue(place, out var known))
        {
            return known;
        }

        if (!_words.TryGetValue(line, out var words))
        {
            words = _words[line] = text is null ? "" : LineWords(text, line);
        }

        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes($"{finding.Rule.Code}\n{finding.Primary.Path}\n{words}"), hash);
        return _keys[place] = Convert.ToHexStringLower(hash[..KeyBytes]);
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
