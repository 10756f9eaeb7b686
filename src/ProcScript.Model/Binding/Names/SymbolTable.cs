using System.Collections.Immutable;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Catalog;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Names;

/// <summary>Every declaration of the library by name, and which file sees which.</summary>
internal sealed class SymbolTable
{
    private readonly Dictionary<string, List<Symbol>> _byName = new(StringComparer.Ordinal);
    private readonly FileReach _reach;
    private readonly Lazy<NearNames> _near;

    private SymbolTable(FileReach reach)
    {
        _reach = reach;
        _near = new Lazy<NearNames>(() => new NearNames(_byName.Keys));
    }

    /// <summary>Every declaration that has a name, in the order of files and text.</summary>
    public ImmutableArray<Symbol> All { get; private set; } = [];

    /// <summary>Collects the declarations and reports names that are declared twice within sight of each other.</summary>
    public static SymbolTable Of(SourceFiles files, UseGraph graph, FileReach reach, FindingSink sink)
    {
        var table = new SymbolTable(reach);
        var all = ImmutableArray.CreateBuilder<Symbol>();
        foreach (var file in files.All)
        {
            file.Symbols = SymbolsOf(file);
            foreach (var symbol in file.Symbols)
            {
                symbol.Begin();
                all.Add(symbol);
                if (!table._byName.TryGetValue(symbol.Name, out var same))
                {
                    table._byName.Add(symbol.Name, same = []);
                }

                same.Add(symbol);
            }
        }

        table.All = all.ToImmutable();
        foreach (var symbol in table.All)
        {
            if (table._byName[symbol.Name] is { Count: > 1 } same && ReferenceEquals(same[0], symbol))
            {
                table.ReportTwice(same, files, graph, sink);
            }
        }

        return table;
    }

    /// <summary>What a name means in a file: its own declaration before one of a file that it uses.</summary>
    public Symbol? Find(string name, SourceFile from)
    {
        if (!_byName.TryGetValue(name, out var same))
        {
            return null;
        }

        Symbol? seen = null;
        foreach (var symbol in same)
        {
            if (symbol.File == from)
            {
                return symbol;
            }

            seen ??= _reach.Sees(from.Index, symbol.File.Index) ? symbol : null;
        }

        return seen;
    }

    /// <summary>Puts a declaration in the place of an old one of the same name; <see cref="All"/> is left as it was made.</summary>
    public void Replace(Symbol old, Symbol now)
    {
        var same = _byName[old.Name];
        same[same.IndexOf(old)] = now;
    }

    /// <summary>The declarations of a name in whatever file.</summary>
    public IReadOnlyList<Symbol> Everywhere(string name) => _byName.TryGetValue(name, out var same) ? same : [];

    /// <summary>Whether declarations may be missing from the sight of a file for a reason that is reported already.</summary>
    public bool IsIncomplete(SourceFile from) => _reach.IsIncomplete(from.Index);

    /// <summary>The names of one sort in the sight of a file that are near to the one wanted.</summary>
    public ImmutableArray<string> Near(string wanted, SourceFile from, FindingSink sink, Func<Symbol, bool> isSort) =>
        _near.Value.Find(wanted, sink, name => Find(name, from) is { } symbol && isSort(symbol));

    /// <summary>The declarations of a file; what is declared as before is the same symbol as before.</summary>
    public static ImmutableArray<Symbol> SymbolsOf(SourceFile file)
    {
        var declarations = file.Tree.Root.Declarations;
        var known = file.Symbols;
        var symbols = ImmutableArray.CreateBuilder<Symbol>(declarations.Length);
        var byNode = new Dictionary<DeclarationSyntax, Symbol>(ReferenceEqualityComparer.Instance);
        foreach (var symbol in known)
        {
            byNode.Add(symbol.Declaration, symbol);
        }

        foreach (var declaration in declarations)
        {
            if (!declaration.Name.IsMissing && (byNode.GetValueOrDefault(declaration) ?? SymbolOf(file, declaration)) is { } symbol)
            {
                symbols.Add(symbol);
                if (symbol is CatalogSymbol { Sink: null } entry && known.FirstOrDefault(old => old.Name == entry.Name) is CatalogSymbol before)
                {
                    entry.Before = before.Bound ?? before.Before;
                }
            }
        }

        return symbols.SequenceEqual(known) ? known : symbols.ToImmutable();
    }

    private static Symbol? SymbolOf(SourceFile file, DeclarationSyntax declaration) => declaration switch
    {
        MachineSyntax machine => new MachineSymbol(file, machine),
        ProcedureSyntax procedure => new ProcedureSymbol(file, procedure),
        CatalogSyntax catalog => catalog.Keyword.Text switch
        {
            "tool" => new ToolSymbol(file, catalog),
            "supply" => new SupplySymbol(file, catalog),
            "certificate" => new CertificateSymbol(file, catalog),
            "fastener" => new KindSymbol(file, catalog, KindCategory.Fastener),
            "clip" => new KindSymbol(file, catalog, KindCategory.Clip),
            "connector" => new KindSymbol(file, catalog, KindCategory.Connector),
            "line" => new KindSymbol(file, catalog, KindCategory.Line),
            "bond" => new KindSymbol(file, catalog, KindCategory.Bond),
            _ => null,
        },
        _ => null,
    };

    private void ReportTwice(List<Symbol> same, SourceFiles files, UseGraph graph, FindingSink sink)
    {
        var union = new ulong[(files.All.Length + 63) / 64];
        for (var later = 0; later < same.Count; later++)
        {
            var bits = _reach.SeenBy(same[later].File.Index);
            if (FirstShared(union, bits) >= 0)
            {
                var number = 0;
                while (FirstShared(_reach.SeenBy(same[number].File.Index), bits) < 0)
                {
                    number++;
                }

                var earlier = same[number];
                var meeting = files.All[FirstShared(_reach.SeenBy(earlier.File.Index), bits)];
                if (!same[later].HasSyntaxErrors)
                {
                    var line = UseIn(meeting, same[later], earlier);
                    sink.Report(DeclaredTwice.At(same[later].Name, same[later].Sort, same[later].Declared, earlier.Declared, line));
                }

                same[later].IsFaulty = earlier.IsFaulty = true;
            }
            else if (same[later] is ProcedureSymbol job && same.Take(later).OfType<ProcedureSymbol>().FirstOrDefault(other => IsOnSame(job, other)) is { } namesake)
            {
                sink.Report(JobDeclaredTwice.At(job.Name, job.Node.Machine.Text, job.Declared, namesake.Declared));
            }

            for (var word = 0; word < union.Length; word++)
            {
                union[word] |= bits[word];
            }
        }

        // Where neither of the two sees the other, a third file brings them together: its line is worth showing.
        SourceSpan? UseIn(SourceFile meeting, Symbol one, Symbol other) =>
            _reach.Sees(one.File.Index, other.File.Index) || _reach.Sees(other.File.Index, one.File.Index)
                ? null
                : graph.Uses[meeting.Index]
                    .Where(edge => _reach.Sees(edge.Target.Index, one.File.Index))
                    .Select(edge => new SourceSpan(meeting.Path, edge.Use.Path.Span))
                    .Cast<SourceSpan?>()
                    .FirstOrDefault();
    }

    private static bool IsOnSame(ProcedureSymbol one, ProcedureSymbol other) =>
        !one.Node.Machine.IsMissing && one.Node.Machine.Text == other.Node.Machine.Text;

    private static int FirstShared(ReadOnlySpan<ulong> one, ReadOnlySpan<ulong> other)
    {
        for (var word = 0; word < one.Length; word++)
        {
            if ((one[word] & other[word]) is not 0 and var shared)
            {
                return (word * 64) + System.Numerics.BitOperations.TrailingZeroCount(shared);
            }
        }

        return -1;
    }
}
