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
        var live = new HashSet<string>(
            library.Trees.Where(tree => tree.Value.Root.Declarations.OfType<ProcedureSyntax>().Any()).Select(tree => tree.Key), StringComparer.Ordinal);
        var open = new Stack<string>(live);
        while (open.TryPop(out var path))
        {
            foreach (var use in library.Trees[path].Root.Uses)
            {
                if (LibraryPath.Resolve(path, use.Path.Value) is { } used && library.Trees.ContainsKey(used) && live.Add(used))
                {
                    open.Push(used);
                }
            }
        }

        return live.ToFrozenSet(StringComparer.Ordinal);
    }
}
