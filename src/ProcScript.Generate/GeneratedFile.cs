namespace ProcScript.Generate;

/// <summary>One file that a generator writes.</summary>
/// <param name="Path">Where it stands, from the repository's root, with forward slashes.</param>
/// <param name="Content">Its whole text, lines ended by <c>\n</c>.</param>
internal sealed record GeneratedFile(string Path, string Content);
