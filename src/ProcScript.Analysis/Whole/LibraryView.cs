using System.Collections.Immutable;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Whole;

/// <summary>
/// A whole library as one of the rules about libraries sees it: there is no way to it but by what stands here, and what is looked at is noted.
/// What the rule said holds for as long as all that is as it was.
/// </summary>
/// <param name="facts">What there is to be seen.</param>
internal sealed class LibraryView(LibraryFacts facts)
{
    /// <summary>What was looked at.</summary>
    public LibraryFacet Seen { get; private set; }

    /// <summary>What the shop has chosen for the library as a whole: the same for as long as anything is remembered.</summary>
    public PathSettings Settings => facts.Settings;

    /// <summary>The machines with their procedures.</summary>
    public IReadOnlyCollection<MachineFamily> Families => Note(LibraryFacet.Families, facts.Families);

    /// <summary>The kinds of the catalog.</summary>
    public ImmutableArray<Kind> Kinds => Note(LibraryFacet.Kinds, facts.Library.Kinds);

    /// <summary>The tools of the catalog.</summary>
    public ImmutableArray<Tool> Tools => Note(LibraryFacet.Tools, facts.Library.Tools);

    /// <summary>What is declared in the files, but for procedures: what is in the catalog, and machines.</summary>
    public IEnumerable<(string Path, DeclarationSyntax Declaration)> Entries => Note(
        LibraryFacet.Entries,
        from tree in facts.Library.Trees.Values
        from declaration in tree.Root.Declarations
        where declaration is not ProcedureSyntax
        select (tree.Text.Path, declaration));

    /// <summary>The procedures as they are written.</summary>
    public IEnumerable<ProcedureSyntax> Procedures => Note(
        LibraryFacet.Procedures, facts.Library.Trees.Values.SelectMany(tree => tree.Root.Declarations).OfType<ProcedureSyntax>());

    /// <summary>Whether there is any file that work comes of.</summary>
    public bool HasWork => Note(LibraryFacet.Live, facts.Live).Count > 0;

    /// <summary>Whether a procedure stands in a file, or one uses it, however far.</summary>
    public bool IsLive(string path) => Note(LibraryFacet.Live, facts.Live).Contains(path);

    /// <summary>Whether some file mentions a name elsewhere than where it is declared.</summary>
    public bool IsMentioned(string name) => Note(LibraryFacet.Mentions, facts.Mentions).Holds(name);

    /// <summary>All of it, down to the texts, for a rule that reads names wherever they stand: it is asked again after every edit.</summary>
    public Library Everything => Note(LibraryFacet.All, facts.Library);

    private T Note<T>(LibraryFacet facet, T what)
    {
        Seen |= facet;
        return what;
    }
}

/// <summary>The sides of a library that a rule may look at: what changes by itself.</summary>
[Flags]
internal enum LibraryFacet
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The machines with their procedures.</summary>
    Families = 1,

    /// <summary>The kinds.</summary>
    Kinds = 2,

    /// <summary>The tools.</summary>
    Tools = 4,

    /// <summary>What is declared, but for procedures.</summary>
    Entries = 8,

    /// <summary>The procedures as they are written.</summary>
    Procedures = 16,

    /// <summary>The files that work comes of.</summary>
    Live = 32,

    /// <summary>The names that are mentioned.</summary>
    Mentions = 64,

    /// <summary>The texts, whatever stands in them.</summary>
    Texts = 128,

    /// <summary>All of it.</summary>
    All = 255,
}
