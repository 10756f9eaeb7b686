using ProcScript.Model.Figures;
using ProcScript.Model.Texts;

namespace ProcScript.Model.Sources;

/// <summary>The files of another store, told in another language.</summary>
/// <param name="store">The files.</param>
/// <param name="texts">The translations.</param>
public sealed class TranslatedSourceStore(ISourceStore store, LibraryTexts texts) : ISourceStore
{
    /// <summary>The translations.</summary>
    public LibraryTexts Texts => texts;

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => store.Paths;

    /// <inheritdoc/>
    public bool IsWhole => store.IsWhole;

    /// <inheritdoc/>
    public SourceReading Read(string path) => store.Read(path);

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => store.FindFigure(path);
}
