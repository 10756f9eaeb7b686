namespace ProcScript.Syntax.Text;

/// <summary>A stretch of one text, in UTF-16 code units.</summary>
/// <param name="Start">The first code unit, counted from 0.</param>
/// <param name="Length">How many code units.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>The position just after the last code unit.</summary>
    public int End => Start + Length;

    /// <summary>The span from <paramref name="start"/> up to, not including, <paramref name="end"/>.</summary>
    public static TextSpan FromBounds(int start, int end) => new(start, end - start);

    /// <summary>The least span that holds both.</summary>
    public TextSpan Cover(TextSpan other) => FromBounds(Math.Min(Start, other.Start), Math.Max(End, other.End));

    /// <summary>Whether <paramref name="position"/> lies in the span, its end included.</summary>
    public bool Touches(int position) => position >= Start && position <= End;
}
