using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>What is to be drafted.</summary>
public sealed record DraftRequest
{
    /// <summary>Whether a file may be changed.</summary>
    public Func<string, bool> MayChange { get; init; } = _ => true;

    /// <summary>What is known beside the steps.</summary>
    public DraftFacts Facts { get; init; } = DraftFacts.None;

    /// <summary>Whether what is only guessed is written, with its question; else only the question is.</summary>
    public bool Guesses { get; init; } = true;
}

/// <summary>What drafting comes to. Nothing is written: the texts are the caller's to write.</summary>
public sealed record DraftReport
{
    /// <summary>The files that come out otherwise, in the order of their paths.</summary>
    public required ImmutableArray<MendedFile> Files { get; init; }

    /// <summary>How many things are declared that were not.</summary>
    public required int Declared { get; init; }

    /// <summary>How many questions the files have, old ones and new ones.</summary>
    public required int Questions { get; init; }

    /// <summary>What could not be drafted, and why.</summary>
    public required ImmutableArray<DraftTrouble> Troubles { get; init; }
}

/// <summary>Something that could not be drafted.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Because">Why not, and what to do.</param>
public sealed record DraftTrouble(SourceSpan Place, string Because);
