using System.Text.RegularExpressions;

namespace ProcScript.Generate.TreeSitter;

/// <summary>How the words and signs of the language are written, by the name of their token, read from the lexer's grammar.</summary>
internal sealed partial class TokenSpellings
{
    private const string Grammar = "grammar/ProcScriptLexer.g4";

    private readonly Dictionary<string, IReadOnlyList<string>> _spellings;

    private TokenSpellings(Dictionary<string, IReadOnlyList<string>> spellings) => _spellings = spellings;

    /// <summary>Reads the lexer's grammar.</summary>
    public static TokenSpellings Read(string root) => new(Token().Matches(File.ReadAllText(Path.Combine(root, Grammar))).ToDictionary(
        match => match.Groups["token"].Value,
        IReadOnlyList<string> (match) => [.. match.Groups["spelling"].Captures.Select(capture => Regex.Unescape(capture.Value))],
        StringComparer.Ordinal));

    /// <summary>The ways to write a token; none where it is a figure, a name or a text.</summary>
    public IReadOnlyList<string> Of(string token) => _spellings.GetValueOrDefault(token) ?? [];

    /// <summary>The word of a token, or null when it is a sign, a figure, a name or a text.</summary>
    public string? WordOf(string token) => Of(token) is [var word] && char.IsAsciiLetter(word[0]) ? word : null;

    [GeneratedRegex(@"^(?<token>[A-Z_]+)\s*:\s*'(?<spelling>[^'\n]+)'(?:\s*\|\s*'(?<spelling>[^'\n]+)')*\s*;", RegexOptions.Multiline)]
    private static partial Regex Token();
}
