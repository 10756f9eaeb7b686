using ProcScript.Analysis;
using ProcScript.Model;
using ProcScript.Model.Names;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What is known of a library at one moment: first what its text says, then the same report that the command line prints.</summary>
/// <param name="Files">The files.</param>
/// <param name="Library">The library.</param>
/// <param name="Encoding">What characters of positions count.</param>
internal sealed record LibraryAnalysis(LibraryFiles Files, Library Library, PositionEncoding Encoding)
{
    private readonly Lazy<LibraryNames> _names = new(() => new LibraryNames(Library.Trees, Files.Memory.Names));
    private volatile LibraryReport? _report;

    /// <summary>Which words mean the same thing.</summary>
    public LibraryNames Names => _names.Value;

    /// <summary>Whether the report is there.</summary>
    public bool IsJudged => _report is not null;

    /// <summary>The report; only who has waited for it may ask.</summary>
    public LibraryReport Report
    {
        get => _report ?? throw new InvalidOperationException("The library is not judged yet.");
        set => _report = value;
    }

    /// <summary>The places of a file; null where the library does not hold it.</summary>
    public TextPlaces? PlacesIn(string path) =>
        (Library.Trees.GetValueOrDefault(path)?.Text ?? _report?.TextOf(path)) is { } text ? new TextPlaces(text, Encoding) : null;

    /// <summary>A stretch of a file as the protocol names it.</summary>
    public Protocol.Location LocationOf(SourceSpan place) =>
        new(Files.UriOf(place.Path), PlacesIn(place.Path)?.RangeOf(place.Span) ?? default);
}
