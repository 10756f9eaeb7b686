using ProcScript.LanguageServer.Protocol;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>A document that the client holds open: its text is what counts, whatever is on the disk.</summary>
/// <param name="Uri">The address as the client writes it.</param>
/// <param name="Version">The client's number of the text.</param>
/// <param name="Text">The text.</param>
internal sealed record OpenDocument(string Uri, int Version, string Text)
{
    /// <summary>The document after changes that follow one another.</summary>
    public OpenDocument With(int version, IEnumerable<TextDocumentContentChangeEvent> changes, PositionEncoding encoding)
    {
        var text = Text;
        foreach (var change in changes)
        {
            if (change.Range is { } range)
            {
                var span = TextPlaces.SpanIn(text, range, encoding);
                text = string.Concat(text.AsSpan(0, span.Start), change.Text, text.AsSpan(span.End));
            }
            else
            {
                text = change.Text;
            }
        }

        return this with { Version = version, Text = text };
    }
}
