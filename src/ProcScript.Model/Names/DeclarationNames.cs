using System.Collections.Immutable;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Names;

/// <summary>Every word of a declaration that names something, in the order of the text.</summary>
public sealed class DeclarationNames
{
    private readonly ILookup<string, NameUse> _byName;

    private DeclarationNames(ImmutableArray<NameUse> all)
    {
        All = all;
        _byName = all.ToLookup(use => use.Name, StringComparer.Ordinal);
    }

    /// <summary>All of them.</summary>
    public ImmutableArray<NameUse> All { get; }

    /// <summary>Finds the names of a declaration.</summary>
    /// <param name="text">The text that it stands in.</param>
    /// <param name="declaration">The declaration.</param>
    public static DeclarationNames Of(SourceText text, DeclarationSyntax declaration)
    {
        var walk = new NameWalk(text);
        walk.Visit(declaration);
        return new DeclarationNames([.. walk.Found.OrderBy(use => use.Span.Start)]);
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
