using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Analysis.Reports;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// What came of earlier checks of a library, for an editor that checks it again after every change: what a binding with a <see
/// cref="BindingMemory"/> gives as the same object comes out as before. Good for one set of <see cref="CheckSettings"/>, but for the day.
/// </summary>
public sealed class CheckMemory
{
    private readonly ConcurrentDictionary<Procedure, RememberedOutcome> _outcomes = new(ReferenceEqualityComparer.Instance);
    private ImmutableSortedDictionary<string, SyntaxTree> _trees = ImmutableSortedDictionary.Create<string, SyntaxTree>(StringComparer.Ordinal);
    private ImmutableArray<Tool> _wrenches = [];
    private Library? _latest;
    private ImmutableHashSet<string>? _changes;

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
    internal FamilyMemory Families { get; } = new();

    /// <summary>The names that a file mentions, or a declaration.</summary>
    internal ConditionalWeakTable<object, MentionedNames> Mentioned { get; } = [];

    /// <summary>What was reported of each file.</summary>
    internal ReportAssembly Reports { get; } = new();

    /// <summary>The last check that came to its end, where the next can go on from it.</summary>
    internal SettledCheck? Settled
    {
        get;
        set
        {
            field = value;
            (_latest, _changes) = (value?.Library, []);
        }
    }

    /// <summary>
    /// The files that have another tree than at the last check that came to its end; null where no steps lead from there to a library. Every
    /// library has to come by here: checks of some may have been cut off.
    /// </summary>
    internal IReadOnlyCollection<string>? ChangesUpTo(Library library)
    {
        if (!ReferenceEquals(library, _latest))
        {
            var isNext = _latest is { } latest && library.Step is { } step && step.IsFrom(latest);
            _changes = isNext ? _changes?.Union(library.Step!.Files) : null;
            _latest = library;
        }

        return Settled is null ? null : _changes;
    }

    /// <summary>Begins a check; what it does not come across is forgotten when it has ended.</summary>
    /// <param name="library">The library.</param>
    /// <param name="changed">The paths of the files that have another tree than at the last check; null where that is not known.</param>
    internal Session Begin(Library library, IEnumerable<string>? changed) =>
        new(this, library, changed?.ToHashSet(StringComparer.Ordinal) ?? TreeChanges.Between(_trees, library.Trees));

    /// <summary>The memory during one check.</summary>
    internal sealed class Session(CheckMemory memory, Library library, HashSet<string> changed)
    {
        private readonly ConcurrentDictionary<(ImmutableArray<string> Files, bool IsGivenAsked), Library> _parts = new();
        private readonly bool _areToolsSame = memory._wrenches.AsSpan().SequenceEqual(library.TorqueWrenches.AsSpan());
        private readonly Dictionary<ImmutableArray<string>, bool> _touched = [];

        /// <summary>The outcome of a procedure from before; null where there is none that holds.</summary>
        public ProcedureOutcome? Recall(Procedure procedure)
        {
            if (!memory.IsKept
                || !memory._outcomes.TryGetValue(procedure, out var remembered)
                || !(_areToolsSame || remembered.HasTools(library)))
            {
                return null;
            }

            if (!IsTouched(procedure.Files))
            {
                return remembered.Outcome;
            }

            if (!remembered.HasLines(library) || !remembered.HasGiven(library))
            {
                return null;
            }

            // The texts of before are of no use to anybody, and would be kept alive.
            if (remembered.Outcome.Strip is { } strip)
            {
                strip.Library = PartFor(procedure);
            }

            return remembered.Outcome;
        }

        /// <summary>
        /// Remembers a new outcome at once: the next check need not make it again where a later change cuts this one off.
        /// </summary>
        /// <param name="procedure">The procedure.</param>
        /// <param name="judge">Makes the outcome; it gets a library of the files that matter alone, so that none is kept alive by another.</param>
        public ProcedureOutcome Add(Procedure procedure, Func<Library, ProcedureOutcome> judge)
        {
            if (!memory.IsKept)
            {
                return judge(library);
            }

            var outcome = judge(PartFor(procedure));
            memory._outcomes[procedure] = new RememberedOutcome(outcome, library);
            return outcome;
        }

        /// <summary>The check has ended.</summary>
        public void End()
        {
            if (changed.Count > 0)
            {
                Forget();
            }

            Settle();
        }

        /// <summary>The check has ended, and all but these outcomes of the last one still stand.</summary>
        public void End(IEnumerable<(ProcedureOutcome Old, ProcedureOutcome Now)> replaced)
        {
            foreach (var (old, now) in replaced)
            {
                if (!ReferenceEquals(old.Procedure, now.Procedure))
                {
                    memory._outcomes.TryRemove(old.Procedure, out _);
                }
            }

            Settle();
        }

        private void Forget()
        {
            var known = library.Procedures.ToHashSet<Procedure>(ReferenceEqualityComparer.Instance);
            foreach (var procedure in memory._outcomes.Keys.Where(procedure => !known.Contains(procedure)).ToList())
            {
                memory._outcomes.TryRemove(procedure, out _);
            }
        }

        private void Settle()
        {
            // Checks that were cut off have left some, too.
            if (memory._outcomes.Count > library.Procedures.Length)
            {
                Forget();
            }

            memory._trees = library.Trees;
            memory._wrenches = library.TorqueWrenches;
        }

        private bool IsTouched(ImmutableArray<string> files)
        {
            if (changed.Count == 0)
            {
                return false;
            }

            if (!_touched.TryGetValue(files, out var isTouched))
            {
                _touched.Add(files, isTouched = files.Any(changed.Contains));
            }

            return isTouched;
        }

        private Library PartFor(Procedure procedure) => _parts.GetOrAdd((procedure.Files, AsksForGiven(procedure)), part => new Library
        {
            Gathered = part.IsGivenAsked ? library.Given(procedure) : GivenDetails.In([]),
            Trees = part.Files.ToImmutableSortedDictionary(path => path, path => library.Trees[path], StringComparer.Ordinal),
            Kinds = [],
            Tools = library.Tools,
            Procedures = [],
            Machines = [],
            Findings = [],
        });
    }

    /// <summary>Whether what other procedures say of actions matters to a procedure.</summary>
    private static bool AsksForGiven(Procedure procedure) =>
        procedure.Stages.Any(stage => stage.Steps.Any(step => step.Verb == Verb.Strip));

    /// <summary>An outcome with what else it depends on but the procedure.</summary>
    private sealed class RememberedOutcome
    {
        private readonly ImmutableArray<Tool> _tools;
        private readonly ImmutableArray<(string Path, int Place, int Line)> _lines;

        public RememberedOutcome(ProcedureOutcome outcome, Library library)
        {
            Outcome = outcome;
            _tools = TorqueWrenches.Of(outcome.Procedure, library).All;
            // Findings of a strip may name lines, and those move without a change of the procedure.
            _lines = outcome.Findings.IsEmpty ? [] : [.. Places(outcome.Procedure).Select(place => (place.Path, place.Span.Start, LineOf(place.Path, place.Span.Start, library)))];
        }

        public ProcedureOutcome Outcome { get; }

        public bool HasTools(Library library) =>
            _tools.AsSpan().SequenceEqual(TorqueWrenches.Of(Outcome.Procedure, library).All.AsSpan());

        /// <summary>Whether what other procedures say of the actions that a <c>strip</c> puts in is as before.</summary>
        public bool HasGiven(Library library) =>
            !AsksForGiven(Outcome.Procedure)
            || (Outcome.Strip?.Library.Gathered is { } given && given.IsSame(library.Given(Outcome.Procedure)));

        public bool HasLines(Library library)
        {
            foreach (var (path, place, line) in _lines)
            {
                if (LineOf(path, place, library) != line)
                {
                    return false;
                }
            }

            return true;
        }

        private static IEnumerable<Syntax.Text.SourceSpan> Places(Procedure procedure) =>
            procedure.Stages.SelectMany(stage => stage.Steps).Concat(procedure.Work).Select(step => step.VerbSpan).Distinct();

        private static int LineOf(string path, int place, Library library) => library.Trees[path].Text.LineAt(place);
    }
}
