using System.Collections.Immutable;

namespace ProcScript.Syntax.Parsing;

/// <summary>What one change to the tokens makes the text go on.</summary>
/// <param name="Action">The change.</param>
/// <param name="Kind">The kind of token that comes; of no meaning for one that goes.</param>
/// <param name="BeginsSentence">Whether a token that comes begins a sentence.</param>
/// <param name="Choice">All kinds that would do as well, <paramref name="Kind"/> among them.</param>
internal sealed record Repair(RepairAction Action, int Kind, bool BeginsSentence, ImmutableArray<int> Choice)
{
    /// <summary>How many tokens it takes: more than one of a verb of two words, of a number before a step, of a name of several words.</summary>
    public int Length { get; init; } = 1;
}

/// <summary>The ways to change one token.</summary>
internal enum RepairAction
{
    /// <summary>A token is missing before the one that is read next.</summary>
    Insert,

    /// <summary>The word that is read next is a keyword misspelt.</summary>
    Respell,

    /// <summary>The keyword that is read next is meant as a name.</summary>
    TakeAsName,

    /// <summary>The token that is read next is one too many.</summary>
    Delete,

    /// <summary>A comma is read next, and the verb before it holds for what comes behind it too.</summary>
    RepeatVerb,

    /// <summary>What is read next belongs to the name before it: a name is one word.</summary>
    JoinName,

    /// <summary>The words that are read next are a text without its quotes.</summary>
    Quote,

    /// <summary>The next two tokens have changed places.</summary>
    Swap,
}
