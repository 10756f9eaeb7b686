using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Another way to write the same, as edits.</summary>
/// <param name="Title">What it does, in the imperative.</param>
/// <param name="Sort">What becomes of the text.</param>
/// <param name="Edits">Edits that do not overlap.</param>
public sealed record Refactoring(string Title, RefactoringSort Sort, ImmutableArray<TextEdit> Edits);

/// <summary>What a refactoring does with the text.</summary>
public enum RefactoringSort
{
    /// <summary>A piece of it becomes a thing of its own.</summary>
    Extract,

    /// <summary>It is written in another way at its place.</summary>
    Rewrite,
}
