using System.Collections.Immutable;

namespace ProcScript.Syntax.Writing;

/// <summary>A rule of the grammar that is not at its end yet.</summary>
/// <param name="Rule">Its name in the grammar.</param>
/// <param name="Start">Where what it is about begins in the text.</param>
/// <param name="IsBegun">Whether any word of it is there.</param>
/// <param name="Words">Its words up to the place, or up to its block.</param>
public sealed record WritingFrame(string Rule, int Start, bool IsBegun, ImmutableArray<string> Words);
