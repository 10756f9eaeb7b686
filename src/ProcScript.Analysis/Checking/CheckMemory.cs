using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Analysis.Reading;
using ProcScript.Analysis.Reports;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// What came of earlier checks of a library, for an editor that checks it again after every change: what a binding with a <see
/// cref="BindingMemory"/> gives as the same object comes out as before. Other <see cref="CheckSettings"/> begin anew, but for another day.
/// </summary>
public sealed class CheckMemory
{
    private readonly ConcurrentDictionary<Procedure, RememberedOutcome> _outcomes = new(ReferenceEqualityComparer.Instance);
    private CheckSettings? _settings;

    /// <summary>An empty memory.</summary>
    public CheckMemory()
        : this(isKept: true)
    {
    }

    /// <summary>A memory, or for a check that no other follows, one that notes nothing.</summary>
    internal CheckMemory(bool isKept) => IsKept = isKept;

    /// <summary>Whether another check follows.</summary>
    internal bool IsKept { get; }

    /// <summary>Lets one check in at a time.</summary>
    internal Lock Gate { get; } = new();

    /// <summary>What the rules of wording had to say of a file, or of a declaration.</summary>
    internal ConditionalWeakTable<object, StrongBox<ImmutableArray<Finding>>> Prose { get; } = [];

    /// <summary>What the rules had to say of a kind.</summary>
    internal ConditionalWeakTable<Kind, StrongBox<ImmutableArray<Finding>>> Kinds { get; } = [];

    /// <summary>What is known of machines.</summary>
    internal Dictionary<Machine, JudgedMachine> Machines { get; set; } = [];

    /// <summary>What came of procedures with their callers.</summary>
    internal FamilyMemory Families { get; private set; } = new();

    /// <summary>The names that a file mentions, or a declaration.</summary>
    internal ConditionalWeakTable<object, MentionedNames> Mentioned { get; } = [];

    /// <summary>What was reported of each file.</summary>
    internal ReportAssembly Reports { get; private set; } = new();

    /// <summary>The last check that came to its end; null where there was none.</summary>
    internal SettledCheck? Settled { get; set; }

    /// <summary>Forgets all where a shop has chosen otherwise since the last check.</summary>
    internal void HoldTo(CheckSettings settings)
    {
        if (_settings?.ChoosesAs(settings) == false)
        {
            _outcomes.Clear();
            Prose.Clear();
            Kinds.Clear();
            Machines = [];
            Families = new FamilyMemory();
            Reports = new ReportAssembly();
            Settled = null;
        }

        _settings = settings;
    }

    /// <summary>Begins a check; what it does not come across is forgotten when it has ended.</summary>
    /// <param name="library">The library.</param>
    internal Session Begin(Library library) => new(this, library);

    /// <summary>The memory during one check.</summary>
    internal sealed class Session(CheckMemory memory, Library library)
    {
        private readonly ConcurrentDictionary<ImmutableArray<string>, Library> _parts = new();
        private readonly LibraryAnswers _answers = new(library);

        /// <summary>The outcome of a procedure from before; null where there is none that holds.</summary>
        public ProcedureOutcome? Recall(Procedure procedure)
        {
            if (!memory._outcomes.TryGetValue(procedure, out var remembered) || !remembered.Seen.Holds(_answers))
            {
                return null;
            }

            // The texts of before are of no use to anybody, and would be kept alive.
            remembered.Seen.MoveTo(PartFor(procedure));
            return remembered.Outcome;
        }

        /// <summary>
        /// Remembers a new outcome at once: the next check need not make it again where a later change cuts this one off.
        /// </summary>
        /// <param name="procedure">The procedure.</param>
        /// <param name="judge">Makes the outcome of what it sees of the library.</param>
        public ProcedureOutcome Add(Procedure procedure, Func<SeenLibrary, ProcedureOutcome> judge)
        {
            var seen = new SeenLibrary(library, memory.IsKept);
            var outcome = judge(seen);
            if (memory.IsKept)
            {
                seen.MoveTo(PartFor(procedure));
                memory._outcomes[procedure] = new RememberedOutcome(outcome, seen);
            }

            return outcome;
        }

        /// <summary>The check has ended.</summary>
        public void End()
        {
            // Those of procedures that are gone, and what checks that were cut off have left.
            if (memory._outcomes.Count > library.Procedures.Length)
            {
                var known = library.Procedures.ToHashSet<Procedure>(ReferenceEqualityComparer.Instance);
                foreach (var procedure in memory._outcomes.Keys.Where(procedure => !known.Contains(procedure)).ToList())
                {
                    memory._outcomes.TryRemove(procedure, out _);
                }
            }
        }

        /// <summary>The files that a procedure is made from, so that no outcome keeps a whole library alive.</summary>
        private Library PartFor(Procedure procedure) => _parts.GetOrAdd(procedure.Files, files => new Library
        {
            Trees = files.ToImmutableSortedDictionary(path => path, path => library.Trees[path], StringComparer.Ordinal),
            Kinds = [],
            Tools = library.Tools,
            Procedures = [],
            Machines = [],
            Findings = [],
        });
    }

    /// <summary>An outcome with all that it was made of beside the procedure and its machine.</summary>
    private sealed record RememberedOutcome(ProcedureOutcome Outcome, SeenLibrary Seen);
}
