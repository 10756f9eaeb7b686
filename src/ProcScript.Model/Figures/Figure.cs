using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Figures;

/// <summary>A picture that an author wants on the cards.</summary>
/// <param name="Path">The file, relative to the root of the library.</param>
/// <param name="Caption">What it shows; it is also what somebody hears who cannot see it.</param>
/// <param name="Declared">Where its path is written.</param>
/// <param name="Phase">Which way it stands.</param>
public sealed record Figure(string Path, string Caption, SourceSpan Declared, NeedsPhase Phase)
{
    /// <summary>Whether it stands on the way back.</summary>
    public bool IsOfRefit => Phase != NeedsPhase.Strip;

    /// <summary>Whether it stands while things come off.</summary>
    public bool IsOfStrip => Phase != NeedsPhase.Refit;
}
