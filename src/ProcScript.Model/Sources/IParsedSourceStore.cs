using ProcScript.Syntax;

namespace ProcScript.Model.Sources;

/// <summary>A store that keeps what was parsed: an editor asks about the same files over and over.</summary>
public interface IParsedSourceStore : ISourceStore
{
    /// <summary>The tree of a file that was read. Safe to call from several threads.</summary>
    /// <param name="path">The file.</param>
    /// <param name="content">Its text.</param>
    SyntaxTree Parse(string path, string content);

    /// <summary>
    /// The files that may read otherwise than in an earlier store; null where that is not known, or where other files are listed.
    /// </summary>
    /// <param name="before">The earlier store.</param>
    IReadOnlyCollection<string>? ChangesSince(ISourceStore before) => null;
}
