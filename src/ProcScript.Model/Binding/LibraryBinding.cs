using System.Collections.Immutable;
using ProcScript.Model.Binding.Catalog;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Model.Catalog;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Model.Sources;
using ProcScript.Syntax;

namespace ProcScript.Model.Binding;

/// <summary>One binding of a library, stage by stage. Within a stage pieces run in parallel, each with a sink of its own.</summary>
internal sealed class LibraryBinding(ISourceStore store, BindingMemory memory, CancellationToken cancellation)
{
    /// <summary>The most choices of arguments of one procedure.</summary>
    internal const int MostArguments = 256;

    private readonly FindingSink _sink = new();
    private readonly FindingList _findings = new();
    private readonly ParallelOptions _parallel = new() { CancellationToken = cancellation };

    /// <summary>The library.</summary>
    public Library Run()
    {
        var files = SourceFiles.Load(store, memory, _sink, cancellation);
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

        _findings.AddRange(graph.Sink);
        Collect(files, machines, procedures, bound, drafts);
        var library = new Library
        {
            Trees = Trees(files),
            IsWhole = store.IsWhole,
            Machines = [.. bound.Values.Select(machine => machine.Machine)],
            Kinds = [.. table.All.OfType<KindSymbol>().Where(symbol => !symbol.IsFaulty).Select(symbol => symbol.Kind).OfType<Kind>()],
            Tools = [.. table.All.OfType<ToolSymbol>().Where(symbol => !symbol.IsFaulty).Select(symbol => symbol.Tool).OfType<Tool>()],
            Procedures = [.. drafts.Select(one => one.Draft.Finish(one.Outline, graph.PathsFrom(one.Outline.Symbol.File)))],
            Findings = _findings.ToImmutable(),
        };
        if (memory.IsKept)
        {
            Keep(library, graph, outlineOf, procedures, bound, drafts);
            memory.Settle(files, table);
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
            foreach (var arguments in Arguments(outline))
            {
                foreach (var variant in variants.Of(outline))
                {
                    wanted.Add(new WantedDraft(outline, arguments, machines[variant]));
                }
            }
        }

        var drafts = pieces.Make(
            wanted,
            one => memory.Drafts.TryGetValue(one.Key, out var draft) && draft.Holds(one.Outline, one.Machine, procedures, pieces.Validity) ? draft : null,
            one => ProcedureElaborator.Elaborate(one.Outline, procedures, one.Machine, one.Arguments, lookup));
        for (var index = 0; index < drafts.Length; index++)
        {
            wanted[index].Draft = drafts[index];
        }

        return wanted;
    }

    /// <summary>Every choice of arguments, the last parameter changing fastest.</summary>
    private static List<ImmutableArray<string>> Arguments(ProcedureOutline outline)
    {
        var choices = new List<ImmutableArray<string>> { ImmutableArray<string>.Empty };
        foreach (var parameter in outline.Parameters)
        {
            if ((long)choices.Count * parameter.Domain.Length > MostArguments)
            {
                outline.Sink.Report(TooMuchToUnroll.Arguments(outline.Symbol.Name, MostArguments, outline.Symbol.Declared));
                return [[.. outline.Parameters.Select(one => one.Domain.FirstOrDefault() ?? "")]];
            }

            choices = [.. choices.SelectMany(choice => parameter.Domain.Select(choice.Add))];
        }

        return choices;
    }

    private void Collect(
        SourceFiles files,
        MachineOutline[] machines,
        ProcedureOutlines procedures,
        OrderedDictionary<MachineVariant, BoundMachine> bound,
        List<WantedDraft> drafts)
    {
        foreach (var file in files.All)
        {
            _findings.AddRange(file.Tree.Findings);
        }

        _findings.AddRange(_sink);
        foreach (var outline in machines)
        {
            _findings.AddRange(outline.Sink);
        }

        foreach (var outline in procedures.All)
        {
            _findings.AddRange(outline.Sink);
        }

        _findings.AddRange(
        [
            .. FindingUnit.Of(bound.Values, machine => machine.Outline, machine => new FindingUnit(machine.Outline.Symbol, machine.Outline.Options), machine => (machine.Variant, machine.Sink)),
            .. FindingUnit.Of(drafts, one => one.Outline, one => new FindingUnit(one.Outline.Symbol, one.Outline.Machine!.Options), one => (one.Machine.Variant, one.Draft.Sink)),
        ]);
    }

    /// <summary>A draft that is to be made, or taken over.</summary>
    private sealed class WantedDraft(ProcedureOutline outline, ImmutableArray<string> arguments, BoundMachine machine)
    {
        public ProcedureOutline Outline => outline;

        public ImmutableArray<string> Arguments => arguments;

        public BoundMachine Machine => machine;

        public DraftKey Key { get; } = new(outline.Symbol, arguments.IsEmpty ? "" : string.Join(' ', arguments), machine.Variant);

        public ProcedureDraft Draft { get; set; } = null!;
    }
}
