namespace ProcScript.Model.Sources;

/// <summary>The only way to files: the faces give one over a disk, an editor's open files or a test's strings.</summary>
public interface ISourceStore
{
    /// <summary>Every <c>.proc</c> file of the library, as root-relative paths with forward slashes, in ordinal order.</summary>
    IReadOnlyList<string> Paths { get; }

    /// <summary>Reads one file. Safe to call from several threads.</summary>
    SourceReading Read(string path);
}
