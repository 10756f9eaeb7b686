namespace ProcScript.Model.Sources;

/// <summary>What came of reading a file.</summary>
/// <param name="Content">The text, or null where there is none.</param>
/// <param name="Outcome">How it went.</param>
/// <param name="Detail">What the system said, where reading failed.</param>
public readonly record struct SourceReading(string? Content, SourceOutcome Outcome, string Detail = "");

/// <summary>How reading a file went.</summary>
public enum SourceOutcome
{
    /// <summary>There is a text.</summary>
    Read,

    /// <summary>There is no such file.</summary>
    Missing,

    /// <summary>The file is there and cannot be read.</summary>
    Unreadable,

    /// <summary>A link leads to it that leaves the library.</summary>
    LeadsOut,

    /// <summary>It is a device, a pipe or a socket, and no file.</summary>
    Special,

    /// <summary>The bytes are not UTF-8.</summary>
    NotText,

    /// <summary>The file is larger than <c>SyntaxTree</c> takes.</summary>
    TooLarge,
}
