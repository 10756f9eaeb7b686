using System.Text.RegularExpressions;

namespace ProcScript.Generate.TextMate;

/// <summary>The words of the language by the name of their token, read from the lexer's grammar.</summary>
internal sealed partial class LexerWords
{
    private const string Grammar = "grammar/ProcScriptLexer.g4";

    private readonly Dictionary<string, string> _words;

    private LexerWords(Dictionary<string, string> words) => _words = words;

    /// <summary>Every word, in the order of the grammar.</summary>
    public IReadOnlyCollection<string> All => _words.Values;

    /// <summary>Reads the lexer's grammar.</summary>
    /// <exception cref="GenerationException">It holds no word.</exception>
    public static LexerWords Read(string root)
    {
        var words = Word().Matches(File.ReadAllText(Path.Combine(root, Grammar)))
            .ToDictionary(match => match.Groups["token"].Value, match => match.Groups["word"].Value, StringComparer.Ordinal);
        return words.Count > 0 ? new LexerWords(words) : throw new GenerationException($"{Grammar} holds no word.");
    }

    /// <summary>The word of a token, or null when the token is a sign, a figure or a text.</summary>
    public string? Of(string token) => _words.GetValueOrDefault(token);

    [GeneratedRegex(@"^(?<token>[A-Z_]+)\s*:\s*'(?<word>[a-z]+)'\s*;", RegexOptions.Multiline)]
    private static partial Regex Word();
}
