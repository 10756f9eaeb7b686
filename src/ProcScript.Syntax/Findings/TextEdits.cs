using System.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Findings;

/// <summary>Edits of one text, put to work.</summary>
public static class TextEdits
{
    /// <summary>The text with the edits in it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="edits">Edits that lie in it and do not overlap, in the order of the text.</param>
    public static string Apply(string text, IEnumerable<TextEdit> edits)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Apply(text, new TextSpan(0, text.Length), edits);
    }

    /// <summary>A stretch of a text with the edits in it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="span">The stretch.</param>
    /// <param name="edits">Edits that begin in the stretch and do not overlap, in the order of the text; the last may reach beyond it.</param>
    public static string Apply(string text, TextSpan span, IEnumerable<TextEdit> edits)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(edits);
        var edited = new StringBuilder(span.Length);
        var done = span.Start;
        foreach (var edit in edits)
        {
            edited.Append(text, done, edit.Place.Span.Start - done).Append(edit.NewText);
            done = edit.Place.Span.End;
        }

        return edited.Append(text, done, Math.Max(0, span.End - done)).ToString();
    }
}
