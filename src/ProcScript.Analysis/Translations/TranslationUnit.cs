namespace ProcScript.Analysis.Translations;

/// <summary>A text of an author with its translation.</summary>
/// <param name="Path">The file that it stands in.</param>
/// <param name="Key">Where it stands there.</param>
/// <param name="Source">The text that was translated.</param>
/// <param name="Target">The translation; empty where there is none yet.</param>
public sealed record TranslationUnit(string Path, string Key, string Source, string Target);
