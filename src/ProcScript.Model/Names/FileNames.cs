using System.Collections.Immutable;

namespace ProcScript.Model.Names;

/// <summary>Every word of a file that names something, declaration by declaration in the order of the text.</summary>
public sealed class FileNames
{
    private readonly ImmutableArray<DeclarationNames> _declarations;
    private readonly HashSet<string> _declared;

    internal FileNames(ImmutableArray<DeclarationNames> declarations)
    {
        _declarations = declarations.RemoveAll(one => one.All.IsEmpty);
        _declared = new HashSet<string>(
            declarations.SelectMany(one => one.All.Take(1)).Where(use => use is { IsDeclaration: true, Scope: NameScope.Library }).Select(use => use.Name),
            StringComparer.Ordinal);
    }

    /// <summary>All of them.</summary>
    public IEnumerable<NameUse> All => _declarations.SelectMany(one => one.All);

    /// <summary>Whether the file declares a name for the library.</summary>
    public bool Declares(string name) => _declared.Contains(name);

    /// <summary>Those with this name.</summary>
    public IEnumerable<NameUse> Named(string name) => _declarations.SelectMany(one => one.Named(name));

    /// <summary>The name at an offset, its end included; null where there is none.</summary>
    public NameUse? At(int offset)
    {
        // The last declaration that begins there or before.
        var (low, high) = (0, _declarations.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _declarations[middle].All[0].Span.Start > offset ? (low, middle) : (middle + 1, high);
        }

        return low == 0 ? null : _declarations[low - 1].At(offset);
    }
}
