using static ProcScript.Generate.TreeSitter.GrammarNode;

namespace ProcScript.Generate.TreeSitter;

/// <summary>
/// The sentences of the parser's grammar as a tree-sitter parser takes them. That one takes a word for a word only where a sentence
/// may go on with it, and for a name elsewhere; so a name is any word here, and only where a word would be both does something have to
/// be said.
/// </summary>
/// <param name="parser">The parser's grammar.</param>
/// <param name="tokens">How its tokens are written.</param>
internal sealed class TreeSentences(Sentences parser, TokenSpellings tokens)
{
    /// <summary>The sentences that are written out by <see cref="GrammarScript"/>: their parts are no tokens of the lexer's grammar.</summary>
    private static readonly string[] WrittenThere = ["name", "text"];

    /// <summary>Where <c>none</c> says that there is nothing, and names nothing.</summary>
    private static readonly string[] MaySayNone = ["namesClause", "inlineNames", "renewProperty"];

    /// <summary>The words that a sentence begins with, and that are never a name: where a name is missing, one of these says so.</summary>
    public IReadOnlyList<string> SentenceStarts { get; } = FindStarts(parser, tokens);

    /// <summary>The sentences as they are written for tree-sitter, by the parser's names.</summary>
    public IReadOnlyDictionary<string, GrammarNode> All { get; } = Convert(parser, tokens);

    /// <summary>Whether a sentence has no node of its own, since it does nothing but choose among others.</summary>
    public bool IsHidden(string name) => name is "name" or "wordPosition"
        || (All.GetValueOrDefault(name) is Choice choice && choice.Alternatives.All(alternative => alternative is Symbol { IsToken: false }));

    /// <summary>The name of a sentence in the tree; one without a node of its own begins with an underscore.</summary>
    public string NameOf(string sentence) => sentence is "file" ? "source_file" : (IsHidden(sentence) ? "_" : "") + SnakeCase(sentence);

    private static string SnakeCase(string name) => string.Concat(name.Select(letter => char.IsUpper(letter) ? $"_{char.ToLowerInvariant(letter)}" : $"{letter}"));

    private static OrderedDictionary<string, GrammarNode> Convert(Sentences parser, TokenSpellings tokens)
    {
        OrderedDictionary<string, GrammarNode> converted = [];
        foreach (var (name, body) in parser.All.Where(rule => !WrittenThere.Contains(rule.Key) && !IsOneWord(rule.Value)))
        {
            converted.Add(name, name switch
            {
                // A comma brings another value or another parameter, and the word behind it says which.
                "furtherParameter" => new Choice([new Symbol("value"), new Symbol("parameter")]),
                "controlBlock" => WithWordsFirst(body),
                "file" => body.Parts[0],
                _ => WithFields(name, Changed(name, body)),
            });
        }

        converted.Add("wordPosition", new Choice(
            [.. PropertyNames().Select(token => new Alias(new Symbol(token), "identifier"))]));
        return converted;

        bool IsOneWord(GrammarNode body) => body is Symbol symbol && tokens.WordOf(symbol.Name) is not null;

        GrammarNode Changed(string sentence, GrammarNode node) => node switch
        {
            Symbol { IsToken: false } symbol when !WrittenThere.Contains(symbol.Name) && IsOneWord(parser[symbol.Name]) => parser[symbol.Name],
            Symbol { Name: "reference" } when MaySayNone.Contains(sentence) => new Choice([node, new Symbol("NONE")]),
            _ => node.Select(part => Changed(sentence, part)),
        };

        // The positions of a control stand where its properties stand too, and some begin with a word that may be a position.
        IEnumerable<string> PropertyNames() => parser.First(parser["propertyBlock"].Parts[1]).Intersect(NameTokens(parser));
    }

    private static GrammarNode WithWordsFirst(GrammarNode body)
    {
        var isFirst = true;
        return Changed(body);

        GrammarNode Changed(GrammarNode node)
        {
            if (node is not Symbol { Name: "position" } || !isFirst)
            {
                return node.Select(Changed);
            }

            isFirst = false;
            return new Choice([node, new Alias(new Symbol("wordPosition"), "position")]);
        }
    }

    /// <summary>What a sentence declares is its name, and what it is made of its kind. A value that is a text can be told from others.</summary>
    private static GrammarNode WithFields(string sentence, GrammarNode node)
    {
        if (node is Symbol { Name: "text" } && sentence.EndsWith("Value", StringComparison.Ordinal))
        {
            return new Field("text", node);
        }

        if (node is not Sequence sequence)
        {
            return node.Select(part => WithFields(sentence, part));
        }

        return new Sequence([.. sequence.Pieces.Select((piece, i) => (piece, i > 0 ? sequence.Pieces[i - 1] : null) switch
        {
            (Symbol { Name: "name" }, Symbol { Name: "count" }) => new Field("kind", piece),
            (Symbol { Name: "reference" }, Symbol { Name: "AS" }) => new Field("name", piece),
            (Symbol { Name: "name" }, Symbol { Name: "ON" }) => new Field("machine", piece),
            (Symbol { Name: "name" or "reference" }, _) when i == 1 && sentence.EndsWith("Declaration", StringComparison.Ordinal) => new Field("name", piece),
            _ => WithFields(sentence, piece),
        })]);
    }

    private static HashSet<string> NameTokens(Sentences parser) => parser.First(parser["name"]).ToHashSet(StringComparer.Ordinal);

    private static IReadOnlyList<string> FindStarts(Sentences parser, TokenSpellings tokens) =>
    [
        .. new[] { "file", "property", "clause", "member", "procedureItem", "step", "refitRule", "testItem" }
            .SelectMany(sentence => parser.First(parser[sentence]))
            .Distinct()
            .Except(NameTokens(parser))
            // These may stand where a name does.
            .Except(parser.First(parser["alert"]))
            .Except(parser.First(parser["position"]))
            .Select(tokens.WordOf)
            .OfType<string>(),
    ];
}
