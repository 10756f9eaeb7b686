using System.Collections.Immutable;

namespace ProcScript.Syntax.Writing;

/// <summary>A word that the grammar takes at a place.</summary>
/// <param name="Sort">What sort of word.</param>
/// <param name="Word">The word itself; empty where there are many.</param>
/// <param name="Begins">Whether it begins a sentence of the block around.</param>
/// <param name="Frames">The rules of the grammar that it would stand in, the innermost first; what it begins itself has no words yet.</param>
public sealed record NextWord(NextWordSort Sort, string Word, bool Begins, ImmutableArray<WritingFrame> Frames);

/// <summary>What sort of word may come.</summary>
public enum NextWordSort
{
    /// <summary>A word of the language.</summary>
    Keyword,

    /// <summary>A name; which ones, the rule around says.</summary>
    Name,

    /// <summary>A quoted text.</summary>
    Text,

    /// <summary>A number.</summary>
    Number,

    /// <summary>A unit.</summary>
    Unit,

    /// <summary>A brace, a comma or another sign.</summary>
    Sign,
}
