using System.Text;

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
        ArgumentNullException.ThrowIfNull(edits);
        var edited = new StringBuilder(text.Length);
        var done = 0;
        foreach (var edit in edits)
        {
            edited.Append(text, done, edit.Place.Span.Start - done).Append(edit.NewText);
            done = edit.Place.Span.End;
        }

        return edited.Append(text, done, text.Length - done).ToString();
    }
}
