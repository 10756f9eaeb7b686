using System.Collections.Immutable;

namespace ProcScript.Syntax.Parsing;

/// <summary>What one change to the tokens makes the text go on.</summary>
/// <param name="Action">The change.</param>
/// <param name="Kind">The kind of token that comes; of no meaning for one that goes.</param>
/// <param name="BeginsSentence">Whether a token that comes begins a sentence.</param>
/// <param name="Choice">All kinds that would do as well, <paramref name="Kind"/> among them.</param>
internal sealed record Repair(RepairAction Action, int Kind, bool BeginsSentence, ImmutableArray<int> Choice);

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
}
