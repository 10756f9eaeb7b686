namespace ProcScript.LanguageServer.Reference;

/// <summary>What the reference says of a word of the language.</summary>
/// <param name="Sort">What the word is there: <c>property</c>, <c>strip verb</c>, <c>condition</c> …; empty for one that prose explains.</param>
/// <param name="Usage">How it is written.</param>
/// <param name="Means">What it means, in one line.</param>
/// <param name="Section">The heading above it.</param>
/// <param name="Line">The line of the reference, from 1.</param>
internal sealed record ReferenceEntry(string Sort, string Usage, string Means, string Section, int Line)
{
    /// <summary>A line of an example of the reference, which the compiler has seen; where none has the word, how it is written.</summary>
    public string Example { get; init; } = "";
}
