using ProcScript.Analysis;
using ProcScript.Model;
using ProcScript.Model.Names;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What is known of a library at one moment: the same report that the command line prints.</summary>
/// <param name="Files">The files.</param>
/// <param name="Report">The report.</param>
/// <param name="Encoding">What characters of positions count.</param>
internal sealed record LibraryAnalysis(LibraryFiles Files, LibraryReport Report, PositionEncoding Encoding)
{
    private readonly Lazy<LibraryNames> _names = new(() => new LibraryNames(Report.Library.Trees, Files.Memory.Names));

    /// <summary>Which words mean the same thing.</summary>
    public LibraryNames Names => _names.Value;

    /// <summary>The library.</summary>
    public Library Library => Report.Library;

    /// <summary>The places of a file; null where the library does not hold it.</summary>
    public TextPlaces? PlacesIn(string path) =>
        Report.TextOf(path) is { } text ? new TextPlaces(text, Encoding) : null;

    /// <summary>A stretch of a file as the protocol names it.</summary>
    public Protocol.Location LocationOf(SourceSpan place) =>
        new(Files.UriOf(place.Path), PlacesIn(place.Path)?.RangeOf(place.Span) ?? default);
}
