using ProcScript.Syntax;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>A document as its own text has it, before anything is known of its library.</summary>
/// <param name="Uri">Its address, as the client writes it.</param>
/// <param name="Path">Its path in the library.</param>
/// <param name="Tree">Its tree.</param>
/// <param name="Encoding">What characters of positions count.</param>
internal sealed record WrittenDocument(string Uri, string Path, SyntaxTree Tree, PositionEncoding Encoding)
{
    /// <summary>The positions of the document.</summary>
    public TextPlaces Places => new(Tree.Text, Encoding);
}
