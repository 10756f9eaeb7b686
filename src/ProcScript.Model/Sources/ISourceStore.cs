using ProcScript.Model.Figures;

namespace ProcScript.Model.Sources;

/// <summary>The only way to files: the faces give one over a disk, an editor's open files or a test's strings.</summary>
public interface ISourceStore
{
    /// <summary>
    /// The files to start from, as root-relative paths with forward slashes, in ordinal order: a whole library, or the files that
    /// somebody asked about. A file that <c>use</c> reaches belongs to the library too, whether it is listed here or not.
    /// </summary>
    IReadOnlyList<string> Paths { get; }

    /// <summary>
    /// Whether <see cref="Paths"/> are all the sources below the root, so that what none of them uses is used nowhere.
    /// </summary>
    bool IsWhole => false;

    /// <summary>Reads one file of the library, listed or not. Safe to call from several threads.</summary>
    SourceReading Read(string path);

    /// <summary>Finds the file of a picture; it is read only where somebody looks into it. Safe to call from several threads.</summary>
    /// <param name="path">The file, whether it is there or not.</param>
    FigureFile FindFigure(string path);
}
