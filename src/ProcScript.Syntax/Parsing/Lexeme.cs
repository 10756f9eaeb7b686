using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>A token as the parser takes it: its kind in the grammar and its place. One put in by a repair is empty.</summary>
internal readonly record struct Lexeme(int Kind, int Start, int End)
{
    public TextSpan Span => TextSpan.FromBounds(Start, End);

    public bool IsMissing => Start == End;
}
