using System.Text.RegularExpressions;
using static ProcScript.Generate.TreeSitter.GrammarNode;

namespace ProcScript.Generate.TreeSitter;

/// <summary>Reads the body of a parser's rule, as ANTLR writes it: <c>a ( B | c )* d? # label</c>.</summary>
/// <param name="rule">The rule's name, for what goes wrong.</param>
/// <param name="body">What stands between its colon and its semicolon, without comments.</param>
internal sealed partial class GrammarReader(string rule, string body)
{
    private readonly IReadOnlyList<string> _signs = [.. Sign().Matches(body).Select(match => match.Value)];
    private readonly Dictionary<string, GrammarNode> _labelled = new(StringComparer.Ordinal);
    private int _next;

    /// <summary>The alternatives that have a name of their own, known once the rule is read.</summary>
    public IReadOnlyDictionary<string, GrammarNode> Labelled => _labelled;

    private string? Ahead => _next < _signs.Count ? _signs[_next] : null;

    /// <summary>Reads the rule. An alternative with a label is a symbol there.</summary>
    /// <exception cref="GenerationException">It is written in a way that is not known here.</exception>
    public GrammarNode Read()
    {
        var read = ReadChoice();
        return Ahead is null ? read : throw new GenerationException($"'{rule}' of the parser's grammar is not understood at '{Ahead}'.");
    }

    private GrammarNode ReadChoice()
    {
        List<GrammarNode> alternatives = [ReadSequence()];
        while (Ahead is "|")
        {
            _next++;
            alternatives.Add(ReadSequence());
        }

        return alternatives is [var only] ? only : new Choice(alternatives);
    }

    private GrammarNode ReadSequence()
    {
        List<GrammarNode> pieces = [];
        while (Ahead is { } sign and not ("|" or ")"))
        {
            if (sign.StartsWith('#'))
            {
                _next++;
                var label = sign[1..].Trim();
                _labelled.Add(label, Joined(pieces));
                return new Symbol(label);
            }

            pieces.Add(ReadPiece());
        }

        return pieces.Count > 0 ? Joined(pieces) : throw new GenerationException($"'{rule}' of the parser's grammar has an empty alternative.");
    }

    private GrammarNode ReadPiece()
    {
        var sign = _signs[_next++];
        GrammarNode piece = new Symbol(sign);
        if (sign is "(")
        {
            piece = ReadChoice();
            _next++;
        }

        return Ahead is "*" or "+" or "?" ? new Repeated(piece, _signs[_next++][0]) : piece;
    }

    private static GrammarNode Joined(List<GrammarNode> pieces) => pieces is [var only] ? only : new Sequence(pieces);

    [GeneratedRegex(@"#\s*\w+|\w+|[()|*+?]")]
    private static partial Regex Sign();
}
