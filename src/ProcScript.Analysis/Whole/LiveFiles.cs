using System.Collections.Frozen;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Whole;

/// <summary>The files that work comes of: those with a procedure, and all that these use.</summary>
internal static class LiveFiles
{
    /// <summary>Their paths.</summary>
    public static FrozenSet<string> Of(Library library)
    {
        var roots = library.Trees.Where(tree => tree.Value.Root.Declarations.OfType<ProcedureSyntax>().Any()).Select(tree => tree.Key);
        return FileUses.Reach(roots, path => FileUses.Of(path, library.Trees[path]).Where(library.Trees.ContainsKey)).ToFrozenSet(StringComparer.Ordinal);
    }
}
