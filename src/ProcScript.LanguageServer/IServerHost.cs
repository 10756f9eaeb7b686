using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.LanguageServer;

/// <summary>What the program that hosts the server lends it: the disk, a folder to write to, and the sight of other processes.</summary>
public interface IServerHost
{
    /// <summary>The version of the program.</summary>
    string Version { get; }

    /// <summary>Today, where the person at the editor is.</summary>
    DateOnly Today { get; }

    /// <summary>The root of the library that a folder belongs to, by the rule of the command line; both are full paths.</summary>
    string FindRoot(string folder);

    /// <summary>The sources below a folder as full paths, in any order; none where it cannot be listed.</summary>
    IReadOnlyCollection<string> ListSources(string folder);

    /// <summary>Reads a file.</summary>
    SourceReading Read(string root, string path);

    /// <summary>Finds the file of a picture, which must not lead out of the library by a link.</summary>
    /// <param name="root">The root of the library, a full path.</param>
    /// <param name="path">The picture, relative to it.</param>
    FigureFile FindFigure(string root, string path);

    /// <summary>Writes a text into a folder; into one that goes when the server ends where none is given.</summary>
    /// <returns>The full path of the file.</returns>
    /// <exception cref="IOException">It cannot be written.</exception>
    string Write(string? folder, string name, string text);

    /// <summary>Waits for the end of another process; ends at once where there is none of that number.</summary>
    Task WaitForProcessAsync(int processId, CancellationToken cancellation);
}
