using System.Collections.Immutable;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Binding;

/// <summary>A binding that has come to its end, with all that the next one needs to change only a part of it.</summary>
internal sealed class SettledBinding
{
    private Dictionary<Symbol, HashSet<SourceFile>>? _misses;

    /// <summary>The library.</summary>
    public Library Library { get; set; } = null!;

    /// <summary>The files.</summary>
    public required SourceFiles Files { get; init; }

    /// <summary>Which file uses which.</summary>
    public required SettledGraph Graph { get; init; }

    /// <summary>What was said of files, of names that are declared twice, of the catalog and of variants.</summary>
    public required FindingSink Sink { get; init; }

    /// <summary>The declarations.</summary>
    public required SymbolTable Table { get; init; }

    /// <summary>The way to them.</summary>
    public required SymbolLookup Lookup { get; init; }

    /// <summary>The outlines of machines.</summary>
    public required MachineOutline[] MachineOutlines { get; init; }

    /// <summary>The outlines of procedures.</summary>
    public required ProcedureOutlines Outlines { get; init; }

    /// <summary>The variants that are needed.</summary>
    public required MachineVariants Variants { get; init; }

    /// <summary>The machines in them.</summary>
    public required OrderedDictionary<MachineVariant, BoundMachine> Machines { get; init; }

    /// <summary>The procedures in them, in the order of <see cref="Outlines"/>.</summary>
    public required List<WantedDraft> Drafts { get; init; }

    /// <summary>The findings, each once.</summary>
    public ImmutableArray<Finding> Findings()
    {
        var findings = new FindingList();
        findings.AddRange(Graph.Sink);
        foreach (var file in Files.All)
        {
            findings.AddRange(file.Tree.Findings);
        }

        findings.AddRange(Sink);
        foreach (var outline in MachineOutlines)
        {
            findings.AddRange(outline.Sink);
        }

        foreach (var outline in Outlines.All)
        {
            findings.AddRange(outline.Sink);
        }

        findings.AddRange(
        [
            .. FindingUnit.Of(Machines.Values, machine => machine.Outline, machine => new FindingUnit(machine.Outline.Symbol, machine.Outline.Options), machine => (machine.Variant, machine.Sink)),
            .. FindingUnit.Of(Drafts, one => one.Outline, one => new FindingUnit(one.Outline.Symbol, one.Outline.Machine!.Options), one => (one.Machine.Variant, one.Draft.Sink)),
        ]);
        return findings.ToImmutable();
    }

    /// <summary>
    /// Whether others than these looked in vain for a name from a file: what is said of that may depend on any text there.
    /// </summary>
    public bool HasMisses(SourceFile from, IReadOnlySet<Symbol> except) =>
        (_misses ??= Misses()).Any(miss => miss.Value.Contains(from) && !except.Contains(miss.Key));

    /// <summary>Puts a procedure in the place of an old one that declares the same name.</summary>
    /// <param name="place">The place of its outline.</param>
    /// <param name="outline">The outline.</param>
    /// <param name="first">The place of its first draft.</param>
    /// <param name="drafts">Its drafts, as many as before.</param>
    public void Replace(int place, ProcedureOutline outline, int first, IReadOnlyList<WantedDraft> drafts)
    {
        var old = Outlines.All[place];
        Table.Replace(old.Symbol, outline.Symbol);
        Variants.Replace(old, outline);
        Outlines.Replace(place, outline);
        _misses!.Remove(old.Symbol);
        Note(_misses, outline.Symbol, outline.Sink);
        for (var i = 0; i < drafts.Count; i++)
        {
            Drafts[first + i] = drafts[i];
            Note(_misses, outline.Symbol, drafts[i].Draft.Sink);
        }
    }

    private Dictionary<Symbol, HashSet<SourceFile>> Misses()
    {
        var misses = new Dictionary<Symbol, HashSet<SourceFile>>();
        foreach (var symbol in Table.All.OfType<CatalogSymbol>())
        {
            Note(misses, symbol, symbol.Sink!);
        }

        foreach (var outline in MachineOutlines)
        {
            Note(misses, outline.Symbol, outline.Sink);
        }

        foreach (var machine in Machines.Values)
        {
            Note(misses, machine.Outline.Symbol, machine.Sink);
        }

        foreach (var outline in Outlines.All)
        {
            Note(misses, outline.Symbol, outline.Sink);
        }

        foreach (var one in Drafts)
        {
            Note(misses, one.Outline.Symbol, one.Draft.Sink);
        }

        return misses;
    }

    private static void Note(Dictionary<Symbol, HashSet<SourceFile>> misses, Symbol symbol, FindingSink sink)
    {
        if (sink.HasMissed)
        {
            var missed = sink.Sightings.Where(seen => seen.Found is null).Select(seen => seen.From);
            if (!misses.TryAdd(symbol, [.. missed]))
            {
                misses[symbol].UnionWith(missed);
            }
        }
    }
}
