namespace ProcScript.Cli.Output;

/// <summary>A stretch of a printed line in one colour.</summary>
/// <param name="Text">The text, fit for a terminal.</param>
/// <param name="Ink">The colour.</param>
internal readonly record struct Piece(string Text, Ink Ink = Ink.Plain);
