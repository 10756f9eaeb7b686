using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Formatting;

/// <summary>Reads from a tree where sentences begin and end, and which words make up a unit, a number or a thread.</summary>
internal sealed class WordPlaces
{
    private readonly Dictionary<int, int> _sentenceEnds = [];
    private readonly List<TextSpan> _joined = [];
    private readonly HashSet<int> _degrees = [];
    private int _nextJoined;

    private WordPlaces()
    {
    }

    public static WordPlaces Of(FileSyntax file)
    {
        var places = new WordPlaces();
        foreach (var node in file.DescendantsAndSelf().Skip(1))
        {
            places.Add(node);
        }

        places._joined.Sort((one, other) => one.Start.CompareTo(other.Start));
        return places;
    }

    /// <summary>The end of the largest sentence that starts at an offset; 0 where none does.</summary>
    public int SentenceEnd(int start) => _sentenceEnds.GetValueOrDefault(start);

    /// <summary>Whether the word that starts at an offset belongs to the word before it. To be asked in the order of the text.</summary>
    public bool IsJoined(int start)
    {
        while (_nextJoined < _joined.Count && _joined[_nextJoined].End <= start)
        {
            _nextJoined++;
        }

        return _degrees.Contains(start) || (_nextJoined < _joined.Count && _joined[_nextJoined].Start < start);
    }

    private void Add(SyntaxNode node)
    {
        switch (node)
        {
            case UnitSyntax unit:
                _joined.Add(unit.Span);
                if (unit.Text == "°")
                {
                    // A degree of angle stands right at its number; every other unit after a blank.
                    _degrees.Add(unit.Span.Start);
                }

                break;
            case NumberSyntax:
                _joined.Add(node.Span);
                break;
            case WordSyntax or TextSyntax or CountSyntax or ReferenceSyntax or AmountSyntax or TestSyntax or ValuesSyntax
                or ParameterSyntax or QuantitySyntax or LimitSyntax or NeedSyntax or OrderSyntax:
                break;
            default:
                // Parents come first, so the largest that starts here is known already.
                _sentenceEnds.TryAdd(node.Span.Start, node.Span.End);
                AddDesignation(node);
                break;
        }
    }

    private void AddDesignation(SyntaxNode node)
    {
        switch (node)
        {
            case ThreadPropertySyntax thread:
                _joined.Add(thread.DesignationSpan);
                break;
            case GradePropertySyntax grade:
                _joined.Add(grade.GradeSpan);
                break;
        }
    }
}
