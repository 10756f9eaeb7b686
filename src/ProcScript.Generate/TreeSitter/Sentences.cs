using System.Text.RegularExpressions;
using static ProcScript.Generate.TreeSitter.GrammarNode;

namespace ProcScript.Generate.TreeSitter;

/// <summary>The sentences of the language by name, in the order of the parser's grammar.</summary>
internal sealed partial class Sentences
{
    private const string Grammar = "grammar/ProcScriptParser.g4";

    private readonly OrderedDictionary<string, GrammarNode> _rules;

    private Sentences(OrderedDictionary<string, GrammarNode> rules) => _rules = rules;

    /// <summary>Every sentence with its name.</summary>
    public IReadOnlyList<KeyValuePair<string, GrammarNode>> All => [.. _rules];

    /// <summary>Reads the parser's grammar; an alternative with a label is a sentence of its own, behind the one it stands in.</summary>
    /// <exception cref="GenerationException">It is written in a way that is not known here.</exception>
    public static Sentences Read(string root)
    {
        OrderedDictionary<string, GrammarNode> rules = [];
        foreach (Match match in Rule().Matches(Comment().Replace(File.ReadAllText(Path.Combine(root, Grammar)), "")))
        {
            GrammarReader reader = new(match.Groups["name"].Value, match.Groups["body"].Value);
            rules.Add(match.Groups["name"].Value, reader.Read());
            foreach (var (label, body) in reader.Labelled)
            {
                rules.Add(label, body);
            }
        }

        return new Sentences(rules);
    }

    /// <summary>One sentence.</summary>
    /// <exception cref="GenerationException">The grammar has no such sentence.</exception>
    public GrammarNode this[string name] =>
        _rules.TryGetValue(name, out var rule) ? rule : throw new GenerationException($"{Grammar} has no sentence '{name}'.");

    /// <summary>The same sentences, each made anew.</summary>
    public Sentences Select(Func<string, GrammarNode, GrammarNode> change)
    {
        OrderedDictionary<string, GrammarNode> changed = [];
        foreach (var (name, rule) in _rules)
        {
            changed.Add(name, change(name, rule));
        }

        return new Sentences(changed);
    }

    /// <summary>Whether a sentence does nothing but choose among others.</summary>
    public bool OnlyChooses(string name) =>
        this[name] is Choice choice && choice.Alternatives.All(alternative => alternative is Symbol { IsToken: false });

    /// <summary>The tokens that a piece may begin with.</summary>
    public IReadOnlySet<string> First(GrammarNode node)
    {
        HashSet<string> first = new(StringComparer.Ordinal);
        switch (node)
        {
            case Symbol symbol:
                return symbol.IsToken ? first.Union([symbol.Name]).ToHashSet(StringComparer.Ordinal) : First(this[symbol.Name]);
            case Sequence sequence:
                foreach (var piece in sequence.Pieces)
                {
                    first.UnionWith(First(piece));
                    if (!MayBeEmpty(piece))
                    {
                        break;
                    }
                }

                return first;
            default:
                first.UnionWith(node.Parts.SelectMany(First));
                return first;
        }
    }

    private bool MayBeEmpty(GrammarNode node) => node switch
    {
        Symbol symbol => !symbol.IsToken && MayBeEmpty(this[symbol.Name]),
        Repeated repeated => repeated.Times != '+' || MayBeEmpty(repeated.Piece),
        Choice choice => choice.Alternatives.Any(MayBeEmpty),
        _ => node.Parts.All(MayBeEmpty),
    };

    [GeneratedRegex("//.*")]
    private static partial Regex Comment();

    [GeneratedRegex(@"^(?<name>[a-z]\w*)\s*:(?<body>[^;]+);", RegexOptions.Multiline)]
    private static partial Regex Rule();
}
