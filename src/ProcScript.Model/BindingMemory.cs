using System.Collections.Immutable;
using ProcScript.Model.Binding;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Syntax;

namespace ProcScript.Model;

/// <summary>
/// What is kept from one binding of a library to the next, for an editor that binds it after every change: machines and procedures come
/// out as the same objects where nothing that they are made from changed.
/// </summary>
public sealed class BindingMemory
{
    private readonly Dictionary<string, SourceFile> _files = new(StringComparer.Ordinal);

    /// <summary>An empty memory.</summary>
    public BindingMemory()
        : this(isKept: true)
    {
    }

    /// <summary>A memory, or for a binding that no other follows, one that notes nothing.</summary>
    internal BindingMemory(bool isKept) => IsKept = isKept;

    /// <summary>Whether another binding follows.</summary>
    internal bool IsKept { get; }

    /// <summary>Lets one binding in at a time.</summary>
    internal Lock Gate { get; } = new();

    /// <summary>Which file uses which; null before the first binding.</summary>
    internal SettledGraph? Graph { get; set; }

    /// <summary>The files of the last binding; null before the first.</summary>
    internal LoadedFiles? Loaded { get; set; }

    /// <summary>The outlines of machines.</summary>
    internal Dictionary<MachineSymbol, MachineOutline> Outlines { get; set; } = [];

    /// <summary>The machines.</summary>
    internal Dictionary<MachineVariant, BoundMachine> Machines { get; set; } = [];

    /// <summary>What procedures say of themselves.</summary>
    internal Dictionary<ProcedureSymbol, ProcedureHead> Heads { get; set; } = [];

    /// <summary>The procedures.</summary>
    internal Dictionary<DraftKey, ProcedureDraft> Drafts { get; set; } = [];

    /// <summary>The last binding, where it came to its end and the next can go on from it.</summary>
    internal SettledBinding? Settled { get; set; }

    /// <summary>The files whose text is not the one of the last binding that came to its end.</summary>
    internal HashSet<SourceFile> Changed { get; } = [];

    /// <summary>The trees of the last library.</summary>
    internal ImmutableSortedDictionary<string, SyntaxTree> Trees { get; set; } = ImmutableSortedDictionary.Create<string, SyntaxTree>(StringComparer.Ordinal);

    /// <summary>The file at a path: the same object every time.</summary>
    internal SourceFile FileAt(string path)
    {
        if (!_files.TryGetValue(path, out var file))
        {
            _files.Add(path, file = new SourceFile(path));
        }

        return file;
    }

    /// <summary>The binding has come to its end: what it used is what holds.</summary>
    internal void Settle(SourceFiles files, SymbolTable table)
    {
        foreach (var path in _files.Keys.Where(path => files.Find(path) is null).ToList())
        {
            _files.Remove(path);
        }

        Settle(files.All.Where(file => file.IsChanged), table.All);
    }

    /// <summary>The binding has come to its end, and only these changed.</summary>
    internal void Settle(IEnumerable<SourceFile> files, IEnumerable<Symbol> symbols)
    {
        foreach (var file in files)
        {
            file.SettledTree = file.Tree;
            file.SettledNames = [.. file.Symbols.Select(symbol => (symbol.Name, symbol.Sort))];
        }

        foreach (var symbol in symbols)
        {
            symbol.Settled = symbol.Faults;
        }

        Changed.Clear();
    }
}
