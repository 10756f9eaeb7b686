namespace ProcScript.Analysis.Expecting;

/// <summary>An expectation that is not met.</summary>
/// <param name="File">The file it stands in.</param>
/// <param name="Line">Its line, counted from 0.</param>
/// <param name="Message">What is otherwise.</param>
/// <param name="AsIs">The lines that would be met, without indentation; null where a person has to decide.</param>
public sealed record ExpectFailure(ExpectFile File, int Line, string Message, IReadOnlyList<string>? AsIs);
