using System.Collections.Immutable;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Binding;

/// <summary>
/// The binding after the commonest of all changes, one within procedures that nothing else refers to: these are bound anew, and all else
/// is taken over without a look at it.
/// </summary>
/// <param name="settled">The last binding.</param>
/// <param name="files">The files as they are now.</param>
/// <param name="memory">What is kept from one binding to the next.</param>
/// <param name="parallel">How to run in parallel.</param>
internal sealed class ChangedProcedures(SettledBinding settled, SourceFiles files, BindingMemory memory, ParallelOptions parallel)
{
    private readonly List<Change> _changes = [];
    private readonly HashSet<Symbol> _old = [];

    /// <summary>The library; null where more than that changed.</summary>
    public Library? Bind(ISourceStore store)
    {
        if (!ReferenceEquals(files, settled.Files) || store.IsWhole != settled.Library.IsWhole || settled.Outlines.HasCircles)
        {
            return null;
        }

        SourceFile[] changed = [.. memory.Changed.OrderBy(file => file.Index)];
        var symbols = Array.ConvertAll(changed, file => SymbolTable.SymbolsOf(file));
        for (var i = 0; i < changed.Length; i++)
        {
            if (!settled.Graph.Holds(changed[i]) || !Find(changed[i], symbols[i]))
            {
                return null;
            }
        }

        return Array.Exists(changed, file => settled.HasMisses(file, _old)) || !Draft() ? null : Take(changed, symbols, store);
    }

    /// <summary>Finds the procedures of a file that are others than before. False where something else is.</summary>
    private bool Find(SourceFile file, ImmutableArray<Symbol> now)
    {
        if (now.Length != file.Symbols.Length)
        {
            return false;
        }

        for (var i = 0; i < now.Length; i++)
        {
            var (old, symbol) = (file.Symbols[i], now[i]);
            if (ReferenceEquals(old, symbol))
            {
                if (file.HasSyntaxErrorsIn(symbol.Span) != symbol.HasSyntaxErrors)
                {
                    return false;
                }
            }
            else if (old is ProcedureSymbol { IsSeen: false } before && symbol is ProcedureSymbol procedure && before.Declared == procedure.Declared && before.Name == procedure.Name
                && settled.Table.Everywhere(before.Name).Count == 1)
            {
                symbol.Begin();
                symbol.Faults = new SymbolFaults(symbol.IsFaulty, symbol.IsFaulty);
                _changes.Add(new Change(before, procedure));
                _old.Add(before);
            }
            else
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Binds them. False where others refer to one, or other variants are needed than before.</summary>
    private bool Draft()
    {
        foreach (var change in _changes)
        {
            change.Place = PlaceOf(change.Before);
            var old = settled.Outlines.All[change.Place];
            var outline = settled.Outlines.Outline(change.Procedure, settled.Lookup, memory.Outlines);
            if (!ReferenceEquals(outline.Machine, old.Machine) || outline.Options != old.Options || outline.Head.Guards != old.Head.Guards)
            {
                return false;
            }

            change.Outline = outline;
            change.Drafts = [.. WantedDraft.Of(outline, [.. settled.Variants.Of(old).Select(variant => settled.Machines[variant])])];
            change.First = FirstDraftOf(change.Place);
            if (change.Drafts.Length != DraftsFrom(change.First, old))
            {
                return false;
            }
        }

        WantedDraft[] wanted = [.. _changes.SelectMany(change => change.Drafts)];
        Parallel.For(0, wanted.Length, parallel, i => wanted[i].Make(settled.Outlines, settled.Lookup));
        return !_changes.Exists(change => change.Before.IsSeen);
    }

    /// <summary>Puts the new procedures in the place of the old ones.</summary>
    private Library Take(SourceFile[] changed, ImmutableArray<Symbol>[] symbols, ISourceStore store)
    {
        memory.Settled = null;
        var isSilent = !Array.Exists(changed, file => !file.Tree.Findings.IsEmpty || !file.SettledTree!.Findings.IsEmpty);
        var procedures = settled.Library.Procedures.ToBuilder();
        var places = ImmutableArray.CreateBuilder<int>();
        foreach (var change in _changes)
        {
            var old = settled.Outlines.All[change.Place];
            isSilent &= old.Sink.Findings.Count == 0 && change.Outline.Sink.Findings.Count == 0;
            for (var i = 0; i < change.Drafts.Length; i++)
            {
                var (place, wanted, before) = (change.First + i, change.Drafts[i], settled.Drafts[change.First + i]);
                isSilent &= before.Draft.Sink.Findings.Count == 0 && wanted.Draft.Sink.Findings.Count == 0;
                procedures[place] = wanted.Draft.Finish(change.Outline, settled.Graph.PathsFrom(change.Procedure.File));
                places.Add(place);
                memory.Drafts.Remove(before.Key);
                memory.Drafts[wanted.Key] = wanted.Draft;
            }

            memory.Heads.Remove(change.Before);
            memory.Heads[change.Procedure] = change.Outline.Head;
            settled.Replace(change.Place, change.Outline, change.First, change.Drafts);
        }

        for (var i = 0; i < changed.Length; i++)
        {
            changed[i].Symbols = symbols[i];
        }

        memory.Trees = memory.Trees.SetItems(changed.Select(file => KeyValuePair.Create(file.Path, file.Tree)));
        memory.Settle(changed, _changes.Select(change => change.Procedure));
        var last = settled.Library;
        settled.Library = new Library
        {
            Trees = memory.Trees,
            IsWhole = last.IsWhole,
            FindFigure = store.FindFigure,
            Machines = last.Machines,
            Kinds = last.Kinds,
            Tools = last.Tools,
            Procedures = procedures.DrainToImmutable(),
            Findings = isSilent ? last.Findings : settled.Findings(),
            Step = new LibraryStep(last, [.. changed.Select(file => file.Path)], places.ToImmutable()),
        };
        memory.Settled = settled;
        return settled.Library;
    }

    /// <summary>The place of a procedure among all: they stand in the order of files and text.</summary>
    private int PlaceOf(ProcedureSymbol symbol)
    {
        var (low, high) = (0, settled.Outlines.All.Length - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = IsBefore(settled.Outlines.All[middle].Symbol, symbol) ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private int FirstDraftOf(int place)
    {
        var symbol = settled.Outlines.All[place].Symbol;
        var (low, high) = (0, settled.Drafts.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = IsBefore(settled.Drafts[middle].Outline.Symbol, symbol) ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private int DraftsFrom(int first, ProcedureOutline outline)
    {
        var end = first;
        while (end < settled.Drafts.Count && ReferenceEquals(settled.Drafts[end].Outline, outline))
        {
            end++;
        }

        return end - first;
    }

    private static bool IsBefore(Symbol one, Symbol other) => one.File.Index != other.File.Index
        ? one.File.Index < other.File.Index
        : one.Span.Start < other.Span.Start;

    /// <summary>A procedure that is another.</summary>
    private sealed class Change(ProcedureSymbol before, ProcedureSymbol procedure)
    {
        public ProcedureSymbol Before => before;

        public ProcedureSymbol Procedure => procedure;

        public int Place { get; set; }

        public ProcedureOutline Outline { get; set; } = null!;

        public int First { get; set; }

        public WantedDraft[] Drafts { get; set; } = [];
    }
}
