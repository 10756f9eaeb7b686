namespace ProcScript.Cards.Changes;

/// <summary>A line of the words on a change.</summary>
/// <param name="Depth">0 for the heading of a job, 1 for the heading of a group, 2 for an entry, 3 for what it says otherwise.</param>
/// <param name="Mark">What stands before an entry: <c>+</c>, <c>-</c>, <c>~</c>, <c>&gt;</c> or <c>!</c>; else empty.</param>
/// <param name="Text">The words, plain.</param>
internal sealed record ChangeLine(int Depth, string Mark, string Text);
