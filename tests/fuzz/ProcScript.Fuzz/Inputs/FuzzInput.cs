namespace ProcScript.Fuzz.Inputs;

/// <summary>One input: a library, and what it was before one of its texts was changed.</summary>
/// <param name="Before">The library before.</param>
/// <param name="Library">The input.</param>
/// <param name="Changed">The file that differs.</param>
internal sealed record FuzzInput(SeedLibrary Before, SeedLibrary Library, string Changed);
