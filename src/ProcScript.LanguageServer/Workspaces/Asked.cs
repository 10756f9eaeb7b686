using ProcScript.LanguageServer.Protocol;
using ProcScript.Syntax;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>A document that a request is about, with all that is known of its library.</summary>
/// <param name="Analysis">What is known.</param>
/// <param name="Path">The document's path in the library.</param>
/// <param name="Tree">Its tree.</param>
internal sealed record Asked(LibraryAnalysis Analysis, string Path, SyntaxTree Tree)
{
    /// <summary>The positions of the document.</summary>
    public TextPlaces Places => new(Tree.Text, Analysis.Encoding);

    /// <summary>The offset of a position.</summary>
    public int OffsetOf(Position position) => Places.OffsetOf(position);
}
