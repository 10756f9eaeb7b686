using System.Globalization;

namespace ProcScript.Cli.Output;

/// <summary>The column of line numbers at the left of an excerpt.</summary>
/// <param name="lastLine">The highest number that stands in it.</param>
internal sealed class Gutter(int lastLine)
{
    private readonly int _width = Math.Max(1, lastLine.ToString(CultureInfo.InvariantCulture).Length);

    /// <summary>No number.</summary>
    public Piece Bar => new(new string(' ', _width + 1) + "| ", Ink.Frame);

    /// <summary>What stands before a file's name.</summary>
    public Piece Arrow(string arrow) => new(new string(' ', _width) + arrow + " ", Ink.Frame);

    /// <summary>What stands before a note that belongs to no line.</summary>
    public Piece Note => new(new string(' ', _width + 1) + "= ", Ink.Frame);

    /// <summary>A line's number.</summary>
    public Piece Number(int line) => Number(line, "|", Ink.Frame);

    /// <summary>A line's number with what becomes of the line.</summary>
    public Piece Number(int line, string sign, Ink ink) =>
        new(line.ToString(CultureInfo.InvariantCulture).PadLeft(_width) + $" {sign} ", ink);

    /// <summary>As wide as <see cref="Note"/>, and blank.</summary>
    public Piece Blank => new(new string(' ', _width + 3));
}
