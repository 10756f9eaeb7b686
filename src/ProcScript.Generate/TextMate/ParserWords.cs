using System.Text.RegularExpressions;

namespace ProcScript.Generate.TextMate;

/// <summary>Which words stand in which sentence, read from the parser's grammar.</summary>
internal sealed partial class ParserWords
{
    private const string Grammar = "grammar/ProcScriptParser.g4";

    private readonly LexerWords _words;
    private readonly Dictionary<string, string> _sentences = new(StringComparer.Ordinal);

    private ParserWords(string grammar, LexerWords words)
    {
        _words = words;
        foreach (Match rule in Rule().Matches(Comment().Replace(grammar, "")))
        {
            var body = rule.Groups["body"].Value;
            _sentences[rule.Groups["name"].Value] = body;
            foreach (Match alternative in LabelledAlternative().Matches(body))
            {
                _sentences[alternative.Groups["label"].Value] = alternative.Groups["body"].Value;
            }
        }
    }

    /// <summary>Reads the parser's grammar.</summary>
    public static ParserWords Read(string root, LexerWords words) => new(File.ReadAllText(Path.Combine(root, Grammar)), words);

    /// <summary>The words that some sentences hold, in the grammar's order.</summary>
    /// <param name="sentences">Names of rules, or of labelled alternatives.</param>
    /// <exception cref="GenerationException">The grammar has no such sentence, or it holds no word.</exception>
    public IReadOnlyList<string> In(params IEnumerable<string> sentences) => [.. sentences.SelectMany(In).Distinct()];

    /// <summary>The words that sentences begin with.</summary>
    public IReadOnlyList<string> AtTheStartOf(params IEnumerable<string> sentences) =>
        [.. sentences.SelectMany(sentence => In(sentence, Start().Match(Body(sentence)).Value)).Distinct()];

    private IReadOnlyList<string> In(string sentence) => In(sentence, Body(sentence));

    private List<string> In(string sentence, string body)
    {
        var found = Token().Matches(body).Select(match => _words.Of(match.Value)).OfType<string>().ToList();
        return found.Count > 0 ? found : throw new GenerationException($"'{sentence}' in {Grammar} holds no word of the language.");
    }

    private string Body(string sentence) =>
        _sentences.GetValueOrDefault(sentence) ?? throw new GenerationException($"{Grammar} has no sentence '{sentence}'.");

    [GeneratedRegex("//.*")]
    private static partial Regex Comment();

    [GeneratedRegex(@"^(?<name>[a-z]\w*)\s*:(?<body>[^;]+);", RegexOptions.Multiline)]
    private static partial Regex Rule();

    [GeneratedRegex(@"(?<=^|\n\s*[:|])(?<body>[^#]+)#\s*(?<label>\w+)")]
    private static partial Regex LabelledAlternative();

    /// <summary>A choice in parentheses, or a single token.</summary>
    [GeneratedRegex(@"^\s*(\([^()]*\)|[A-Z_]+)")]
    private static partial Regex Start();

    [GeneratedRegex(@"\b[A-Z_]{2,}\b")]
    private static partial Regex Token();
}
