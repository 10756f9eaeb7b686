using System.Collections.Immutable;
using ProcScript.Model.Binding.Catalog;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Model.Catalog;
using ProcScript.Model.Sources;
using ProcScript.Syntax;

namespace ProcScript.Model.Binding;

/// <summary>One binding of a library, stage by stage. Within a stage pieces run in parallel, each with a sink of its own.</summary>
internal sealed class LibraryBinding(ISourceStore store, BindingMemory memory, CancellationToken cancellation)
{
    private readonly FindingSink _sink = new();
    private readonly ParallelOptions _parallel = new() { CancellationToken = cancellation };

    /// <summary>The library.</summary>
    public Library Run()
    {
        var files = SourceFiles.Load(store, memory, _sink, cancellation);
        if (memory.Settled is { } settled && new ChangedProcedures(settled, files, memory, _parallel).Bind(store) is { } changed)
        {
            return changed;
        }

        // Where this one is cut off, the next has nothing to go on from.
        memory.Settled = null;
        var isGraphSame = memory.Graph?.Holds(files) ?? false;
        var graph = isGraphSame ? memory.Graph! : SettledGraph.Of(files);
        var table = SymbolTable.Of(files, graph.Graph, graph.Reach, _sink);
        var lookup = new SymbolLookup(table, memory.IsKept);
        var validity = new Validity(files, table, graph.Reach, isGraphSame, isGraphSame && files.All.All(HasSameNames));
        validity.NoteFaults(isLate: false);
        new CatalogBinder(table, lookup, validity).BindAll(_sink);
        validity.NoteFaults(isLate: true);
        cancellation.ThrowIfCancellationRequested();

        var pieces = new Pieces(validity, _parallel);
        var machines = Outline(table, lookup, pieces);
        var outlineOf = machines.ToDictionary(outline => outline.Symbol);
        var procedures = ProcedureOutlines.Of(table, lookup, outlineOf, pieces, memory.Heads);
        var variants = new MachineVariants(machines, procedures, _sink);
        var bound = Elaborate(variants, lookup, pieces);
        var drafts = Elaborate(procedures, variants, bound, lookup, pieces);

        var whole = new SettledBinding
        {
            Files = files,
            Graph = graph,
            Sink = _sink,
            Table = table,
            Lookup = lookup,
            MachineOutlines = machines,
            Outlines = procedures,
            Variants = variants,
            Machines = bound,
            Drafts = drafts,
        };
        var library = whole.Library = new Library
        {
            Trees = Trees(files),
            IsWhole = store.IsWhole,
            Texts = (store as TranslatedSourceStore)?.Texts,
            FindFigure = store.FindFigure,
            Machines = [.. bound.Values.Select(machine => machine.Machine)],
            Kinds = [.. table.All.OfType<KindSymbol>().Where(symbol => !symbol.IsFaulty).Select(symbol => symbol.Kind).OfType<Kind>()],
            Tools = [.. table.All.OfType<ToolSymbol>().Where(symbol => !symbol.IsFaulty).Select(symbol => symbol.Tool).OfType<Tool>()],
            Procedures = [.. drafts.Select(one => one.Draft.Finish(one.Outline, graph.PathsFrom(one.Outline.Symbol.File)))],
            Findings = whole.Findings(),
        };
        if (memory.IsKept)
        {
            Keep(library, graph, outlineOf, procedures, bound, drafts);
            memory.Settle(files, table);
            memory.Settled = whole;
        }

        return library;
    }

    private void Keep(
        Library library,
        SettledGraph graph,
        Dictionary<MachineSymbol, MachineOutline> machines,
        ProcedureOutlines procedures,
        OrderedDictionary<MachineVariant, BoundMachine> bound,
        List<WantedDraft> drafts)
    {
        memory.Graph = graph;
        memory.Outlines = machines;
        memory.Machines = new Dictionary<MachineVariant, BoundMachine>(bound);
        memory.Heads = procedures.All.ToDictionary(outline => outline.Symbol, outline => outline.Head);
        memory.Drafts = drafts.ToDictionary(one => one.Key, one => one.Draft);
        memory.Trees = library.Trees;
    }

    private static bool HasSameNames(SourceFile file) =>
        !file.IsChanged || file.Symbols.Select(symbol => (symbol.Name, symbol.Sort)).SequenceEqual(file.SettledNames);

    private ImmutableSortedDictionary<string, SyntaxTree> Trees(SourceFiles files)
    {
        if (memory.Trees.Count != files.All.Length || files.All.Any(file => file.IsChanged && !memory.Trees.ContainsKey(file.Path)))
        {
            return files.All.ToImmutableSortedDictionary(file => file.Path, file => file.Tree, StringComparer.Ordinal);
        }

        return memory.Trees.SetItems(files.All.Where(file => file.IsChanged).Select(file => KeyValuePair.Create(file.Path, file.Tree)));
    }

    private MachineOutline[] Outline(SymbolTable table, SymbolLookup lookup, Pieces pieces) => pieces.Make(
        table.All.OfType<MachineSymbol>().ToArray(),
        symbol => memory.Outlines.TryGetValue(symbol, out var outline)
            && outline.WasFaulty == symbol.IsFaulty
            && pieces.Validity.Holds(outline.Sink, symbol.File) ? outline : null,
        symbol => OutlineWalk.Of(symbol, lookup));

    private OrderedDictionary<MachineVariant, BoundMachine> Elaborate(MachineVariants variants, SymbolLookup lookup, Pieces pieces)
    {
        var wanted = variants.All;
        var machines = pieces.Make(
            wanted,
            variant => memory.Machines.TryGetValue(variant, out var machine)
                && machine.Trouble == variant.Outline.Symbol.Trouble
                && pieces.Validity.Holds(machine.Sink, variant.Outline.Symbol.File) ? machine : null,
            variant => MachineElaborator.Elaborate(variant.Outline, lookup, variant.Options));
        return new OrderedDictionary<MachineVariant, BoundMachine>(wanted.Zip(machines, KeyValuePair.Create));
    }

    private List<WantedDraft> Elaborate(
        ProcedureOutlines procedures,
        MachineVariants variants,
        OrderedDictionary<MachineVariant, BoundMachine> machines,
        SymbolLookup lookup,
        Pieces pieces)
    {
        var wanted = new List<WantedDraft>();
        foreach (var outline in procedures.All)
        {
            wanted.AddRange(WantedDraft.Of(outline, [.. variants.Of(outline).Select(variant => machines[variant])]));
        }

        var drafts = pieces.Make(
            wanted,
            one => memory.Drafts.TryGetValue(one.Key, out var draft) && draft.Holds(one.Outline, one.Machine, procedures, pieces.Validity) ? draft : null,
            one => one.Made(procedures, lookup));
        for (var index = 0; index < drafts.Length; index++)
        {
            wanted[index].Draft = drafts[index];
        }

        return wanted;
    }
}
