using System.Collections.Immutable;
using ProcScript.Syntax;

namespace ProcScript.Model.Names;

/// <summary>Every word of a file that names something, in the order of the text.</summary>
public sealed class FileNames
{
    private readonly ILookup<string, NameUse> _byName;

    private FileNames(ImmutableArray<NameUse> all)
    {
        All = all;
        _byName = all.ToLookup(use => use.Name, StringComparer.Ordinal);
    }

    /// <summary>All of them.</summary>
    public ImmutableArray<NameUse> All { get; }

    /// <summary>Finds the names of a file.</summary>
    public static FileNames Of(SyntaxTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        var walk = new NameWalk(tree.Text);
        walk.Visit(tree.Root);
        return new FileNames([.. walk.Found.OrderBy(use => use.Span.Start)]);
    }

    /// <summary>Those with this name.</summary>
    public IEnumerable<NameUse> Named(string name) => _byName[name];

    /// <summary>The name at an offset, its end included; null where there is none.</summary>
    public NameUse? At(int offset)
    {
        var (low, high) = (0, All.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var span = All[middle].Span;
            if (span.Touches(offset))
            {
                // Where two touch, the one that begins here is meant.
                return middle < All.Length - 1 && All[middle + 1].Span.Start == offset ? All[middle + 1] : All[middle];
            }

            (low, high) = span.Start > offset ? (low, middle - 1) : (middle + 1, high);
        }

        return null;
    }
}
