using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// What came of procedures in earlier checks of a library, for an editor that checks it again after every change: a procedure whose
/// files are the same trees as before comes out as before. Good for one set of <see cref="CheckSettings"/>.
/// </summary>
public sealed class CheckMemory
{
    private ConcurrentDictionary<string, Remembered> _last = new(StringComparer.Ordinal);

    /// <summary>What the rules of wording had to say of a file.</summary>
    internal ConditionalWeakTable<SyntaxTree, StrongBox<ImmutableArray<Finding>>> Prose { get; } = [];

    /// <summary>The names that a file mentions.</summary>
    internal ConditionalWeakTable<SyntaxTree, MentionedNames> Mentioned { get; } = [];

    /// <summary>Begins a check; what it does not come across is forgotten when it has ended.</summary>
    internal Session Begin(IReadOnlyDictionary<Machine, MachineFacts> facts) => new(this, facts);

    private sealed record Remembered(ImmutableArray<SyntaxTree> Trees, MachineFacts Facts, ProcedureOutcome Outcome);

    /// <summary>The memory during one check.</summary>
    internal sealed class Session
    {
        private readonly CheckMemory _memory;
        private readonly ConcurrentDictionary<string, Remembered> _before;
        private readonly ConcurrentDictionary<Machine, MachineFacts> _facts;
        private readonly ConcurrentDictionary<string, Remembered> _now = new(StringComparer.Ordinal);

        internal Session(CheckMemory memory, IReadOnlyDictionary<Machine, MachineFacts> facts)
        {
            _memory = memory;
            _before = memory._last;
            _facts = new ConcurrentDictionary<Machine, MachineFacts>(facts);
        }

        /// <summary>The facts of every machine that an outcome speaks of: those of this check, and those that were remembered with one.</summary>
        public IReadOnlyDictionary<Machine, MachineFacts> Facts => _facts;

        /// <summary>The outcome of a procedure: the one from before, or a new one.</summary>
        /// <param name="library">The library.</param>
        /// <param name="procedure">The procedure.</param>
        /// <param name="facts">Its machine.</param>
        /// <param name="judge">Makes a new one; it gets a library of the files that matter alone, so that none is kept alive by another.</param>
        public ProcedureOutcome Recall(Library library, Procedure procedure, MachineFacts facts, Func<Library, ProcedureOutcome> judge)
        {
            ImmutableArray<SyntaxTree> trees = [.. procedure.Files.Select(path => library.Trees[path])];
            var key = KeyOf(procedure);
            var found = _before.TryGetValue(key, out var remembered) && remembered.Trees.AsSpan().SequenceEqual(trees.AsSpan())
                ? remembered
                : new Remembered(trees, facts, judge(Part(library, procedure)));
            // An outcome that a later change cuts off is kept all the same: the next check need not make it again.
            _before[key] = found;
            _now[key] = found;
            _facts.TryAdd(found.Outcome.Procedure.Machine, found.Facts);
            return found.Outcome;
        }

        /// <summary>The check has ended.</summary>
        public void End() => Interlocked.Exchange(ref _memory._last, _now);

        private static string KeyOf(Procedure procedure) =>
            $"{procedure.Declared.Path}\n{procedure.Declared.Span.Start}\n{procedure.Job}\n{string.Join(' ', procedure.Machine.With.Select(option => option.Name))}";

        private static Library Part(Library library, Procedure procedure) => new()
        {
            Trees = procedure.Files.ToImmutableSortedDictionary(path => path, path => library.Trees[path], StringComparer.Ordinal),
            Kinds = [],
            Tools = library.Tools,
            Procedures = [],
            Machines = [],
            Findings = [],
        };
    }
}
