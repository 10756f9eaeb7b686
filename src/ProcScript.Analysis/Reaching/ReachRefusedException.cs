namespace ProcScript.Analysis.Reaching;

/// <summary>A question about a machine has no answer; the message says why, and what to do.</summary>
/// <param name="message">A whole sentence, in lower case after the name of the program.</param>
public sealed class ReachRefusedException(string message) : Exception(message);
