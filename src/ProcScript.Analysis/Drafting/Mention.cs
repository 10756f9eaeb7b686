using System.Collections.Immutable;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax;

namespace ProcScript.Analysis.Drafting;

/// <summary>A place in a procedure that names an item of the machine.</summary>
/// <param name="Name">The item, with the values of variables in its index.</param>
/// <param name="Sort">What the place takes it for; null where it fits any sort.</param>
/// <param name="Verb">What is done to it; empty where it is only spoken of.</param>
/// <param name="InStrip">Whether it is a step, and no rule of the refit.</param>
internal sealed record Mention(string Name, ItemSort? Sort, string Verb, bool InStrip)
{
    /// <summary>How many of which kind the step says they are.</summary>
    public PiecesSyntax? Pieces { get; init; }

    /// <summary>How many of them the step is about; 0 where it is about all.</summary>
    public int Amount { get; init; }

    /// <summary>The position that a control is to stand in.</summary>
    public string? Position { get; init; }

    /// <summary>Whether a part goes out of the way by it.</summary>
    public bool Clears => InStrip && Verb is "remove" or "aside" or "strip";

    /// <summary>The name without its index.</summary>
    public string Base => CanonicalName.Base(Name);
}

/// <summary>All that a procedure names, in the order of its text, with calls and loops rolled out.</summary>
/// <param name="Tree">The file.</param>
/// <param name="Procedure">The procedure.</param>
/// <param name="Items">The items.</param>
/// <param name="Catalog">Tools and supplies, with the word that declares one.</param>
internal sealed record ProcedureMentions(
    SyntaxTree Tree, ProcedureSyntax Procedure, ImmutableArray<Mention> Items, ImmutableArray<(string Keyword, string Name)> Catalog);
