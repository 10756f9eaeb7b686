using System.Collections.Immutable;
using ProcScript.Model;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// What of a library is another than in the one that was checked last. Nobody says so: what a binding gives as the same object is the same, so
/// it is found by comparing objects.
/// </summary>
internal sealed class LibraryChange
{
    private LibraryChange()
    {
    }

    /// <summary>The paths of the files with another tree.</summary>
    public required HashSet<string> Files { get; init; }

    /// <summary>The places of the procedures that are others.</summary>
    public required ImmutableArray<int> Procedures { get; init; }

    /// <summary>Whether a machine is another.</summary>
    public required bool AreMachinesOther { get; init; }

    /// <summary>Whether a kind is another.</summary>
    public required bool AreKindsOther { get; init; }

    /// <summary>Whether a tool is another.</summary>
    public required bool AreToolsOther { get; init; }

    /// <summary>Whether a file uses others than before, or has procedures and had none, or the other way.</summary>
    public required bool AreUsesOther { get; init; }

    /// <summary>Whether something is declared otherwise, but for procedures.</summary>
    public required bool AreEntriesOther { get; init; }

    /// <summary>Whether a procedure is written otherwise.</summary>
    public required bool AreProcedureTextsOther { get; init; }

    /// <summary>From one library to another; null where there are other files, or not as many procedures: then places mean nothing.</summary>
    public static LibraryChange? Between(Library before, Library now)
    {
        if (before.Procedures.Length != now.Procedures.Length || before.IsWhole != now.IsWhole)
        {
            return null;
        }

        var files = TreeChanges.Between(before, now);
        var trees = new List<(SyntaxTree Before, SyntaxTree Now)>(files.Count);
        foreach (var path in files)
        {
            if (!before.Trees.TryGetValue(path, out var old) || !now.Trees.TryGetValue(path, out var tree))
            {
                return null;
            }

            trees.Add((old, tree));
        }

        return new LibraryChange
        {
            Files = files,
            Procedures = [.. Enumerable.Range(0, now.Procedures.Length).Where(place => !ReferenceEquals(before.Procedures[place], now.Procedures[place]))],
            AreMachinesOther = AreOther(before.Machines, now.Machines),
            AreKindsOther = AreOther(before.Kinds, now.Kinds),
            AreToolsOther = AreOther(before.Tools, now.Tools),
            AreUsesOther = trees.Exists(tree => !tree.Before.Root.Uses.SequenceEqual(tree.Now.Root.Uses) || HasProcedures(tree.Before) != HasProcedures(tree.Now)),
            AreEntriesOther = trees.Exists(tree => AreOther([.. Entries(tree.Before)], [.. Entries(tree.Now)])),
            AreProcedureTextsOther = trees.Exists(tree => AreOther([.. Procedures(tree.Before)], [.. Procedures(tree.Now)])),
        };

        static IEnumerable<DeclarationSyntax> Entries(SyntaxTree tree) => tree.Root.Declarations.Where(declaration => declaration is not ProcedureSyntax);

        static IEnumerable<DeclarationSyntax> Procedures(SyntaxTree tree) => tree.Root.Declarations.Where(declaration => declaration is ProcedureSyntax);

        static bool HasProcedures(SyntaxTree tree) => Procedures(tree).Any();
    }

    private static bool AreOther<T>(ImmutableArray<T> before, ImmutableArray<T> now)
        where T : class => before != now && !before.AsSpan().SequenceEqual(now.AsSpan(), ReferenceEqualityComparer.Instance);
}
