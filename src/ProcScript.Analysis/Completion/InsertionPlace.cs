using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>A place between the words of a text where lines can go.</summary>
/// <param name="Path">The file.</param>
/// <param name="At">The offset.</param>
/// <param name="Gap">What divides a line from its neighbours there.</param>
/// <param name="IsBehind">Whether the lines follow what stands there, instead of going before it.</param>
internal readonly record struct InsertionPlace(string Path, int At, string Gap, bool IsBehind)
{
    /// <summary>The text that brings some lines there.</summary>
    public string Join(IEnumerable<string> lines)
    {
        var gap = Gap;
        return string.Concat(IsBehind ? lines.Select(line => gap + line) : lines.Select(line => line + gap));
    }

    /// <summary>The empty stretch at the place.</summary>
    public SourceSpan Span => new(Path, new TextSpan(At, 0));
}
