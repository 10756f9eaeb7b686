using System.Collections.Immutable;
using ProcScript.Model.Binding.Catalog;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Binding;

/// <summary>One binding of a library, stage by stage. Within a stage pieces run in parallel, each with a sink of its own.</summary>
internal sealed class LibraryBinding(ISourceStore store, CancellationToken cancellation)
{
    /// <summary>The most choices of arguments of one procedure.</summary>
    internal const int MostArguments = 256;

    private readonly FindingSink _sink = new();
    private readonly FindingList _findings = new();
    private readonly ParallelOptions _parallel = new() { CancellationToken = cancellation };

    /// <summary>The library.</summary>
    public Library Run()
    {
        var files = SourceFiles.Load(store, _sink, cancellation);
        var graph = UseGraph.Resolve(files, _sink);
        var reach = FileReach.Of(graph);
        var table = SymbolTable.Of(files, graph, reach, _sink);
        var lookup = new SymbolLookup(table);
        new CatalogBinder(table).BindAll(_sink);
        cancellation.ThrowIfCancellationRequested();

        var machines = Outline(table, lookup);
        var procedures = ProcedureOutlines.Of(table, lookup, machines.ToDictionary(outline => outline.Symbol), cancellation);
        var variants = new MachineVariants(machines, procedures, _sink);
        var bound = Elaborate(variants, lookup);
        var drafts = Elaborate(procedures, variants, bound, lookup);

        var units = Units(machines, procedures, bound, drafts);
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

        _findings.AddRange(units);
        return new Library
        {
            Trees = files.All.ToImmutableSortedDictionary(file => file.Path, file => file.Tree, StringComparer.Ordinal),
            IsWhole = store.IsWhole,
            Machines = [.. bound.Values.Select(machine => machine.Machine)],
            Kinds = [.. table.All.OfType<KindSymbol>().Where(symbol => !symbol.IsFaulty).Select(symbol => symbol.Kind).OfType<Kind>()],
            Tools = [.. table.All.OfType<ToolSymbol>().Where(symbol => !symbol.IsFaulty).Select(symbol => symbol.Tool).OfType<Tool>()],
            Procedures = Finish(drafts, files, reach),
            Findings = _findings.ToImmutable(),
        };
    }

    private MachineOutline[] Outline(SymbolTable table, SymbolLookup lookup)
    {
        var symbols = table.All.OfType<MachineSymbol>().ToArray();
        var outlines = new MachineOutline[symbols.Length];
        Parallel.For(0, symbols.Length, _parallel, index => outlines[index] = OutlineWalk.Of(symbols[index], lookup));
        return outlines;
    }

    private OrderedDictionary<MachineVariant, BoundMachine> Elaborate(MachineVariants variants, SymbolLookup lookup)
    {
        var wanted = variants.All;
        var machines = new BoundMachine[wanted.Length];
        Parallel.For(0, wanted.Length, _parallel, index =>
            machines[index] = MachineElaborator.Elaborate(wanted[index].Outline, lookup, wanted[index].Options));
        return new OrderedDictionary<MachineVariant, BoundMachine>(wanted.Zip(machines, KeyValuePair.Create));
    }

    private ProcedureDraft[] Elaborate(
        ProcedureOutlines procedures,
        MachineVariants variants,
        OrderedDictionary<MachineVariant, BoundMachine> machines,
        SymbolLookup lookup)
    {
        var wanted = new List<(ProcedureOutline Outline, ImmutableArray<string> Arguments, BoundMachine Machine)>();
        foreach (var outline in procedures.All)
        {
            foreach (var arguments in Arguments(outline))
            {
                wanted.AddRange(variants.Of(outline).Select(variant => (outline, arguments, machines[variant])));
            }
        }

        var drafts = new ProcedureDraft[wanted.Count];
        Parallel.For(0, wanted.Count, _parallel, index =>
        {
            var (outline, arguments, machine) = wanted[index];
            drafts[index] = ProcedureElaborator.Elaborate(outline, procedures, machine, arguments, lookup);
        });
        return drafts;
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

    private static List<FindingUnit> Units(
        MachineOutline[] machines,
        ProcedureOutlines procedures,
        OrderedDictionary<MachineVariant, BoundMachine> bound,
        ProcedureDraft[] drafts)
    {
        var ofMachines = machines.ToDictionary(outline => outline, outline => new FindingUnit(outline.Symbol, outline.Options));
        foreach (var machine in bound.Values)
        {
            ofMachines[machine.Outline].Add(machine.Variant, machine.Sink);
        }

        var ofProcedures = procedures.All
            .Where(outline => outline.Machine is not null)
            .ToDictionary(outline => outline, outline => new FindingUnit(outline.Symbol, outline.Machine!.Options));
        foreach (var draft in drafts)
        {
            ofProcedures[draft.Outline].Add(draft.Machine.Variant, draft.Sink);
        }

        return
        [
            .. machines.Select(outline => ofMachines[outline]),
            .. procedures.All.Where(ofProcedures.ContainsKey).Select(outline => ofProcedures[outline]),
        ];
    }

    private static ImmutableArray<Procedure> Finish(ProcedureDraft[] drafts, SourceFiles files, FileReach reach)
    {
        var paths = new Dictionary<SourceFile, ImmutableArray<string>>();
        var procedures = ImmutableArray.CreateBuilder<Procedure>(drafts.Length);
        foreach (var draft in drafts)
        {
            var file = draft.Outline.Symbol.File;
            if (!paths.TryGetValue(file, out var from))
            {
                paths.Add(file, from = [.. reach.From(file.Index).Select(index => files.All[index].Path)]);
            }

            procedures.Add(draft.Finish(from));
        }

        return procedures.MoveToImmutable();
    }
}
