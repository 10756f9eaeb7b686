using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Necessity;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// Which procedures there are in which variants, who calls whose lines, and what was said of each with its callers. From one check to the
/// next only what changed is entered, and only the families that it concerns are judged again.
/// </summary>
internal sealed class FamilyMemory
{
    private static readonly IEqualityComparer<object> Same = ReferenceEqualityComparer.Instance;

    private readonly Dictionary<SourceSpan, HashSet<FamilyMember>> _callers = [];
    private readonly Dictionary<SourceSpan, SourceSpan> _owners = [];
    private readonly Dictionary<SourceSpan, ImmutableArray<Finding>> _findings = [];
    private Dictionary<ProcedureOutcome, Entry> _entries = new(Same);

    /// <summary>What the rules have to say of every family, in the order of the procedures.</summary>
    /// <param name="outcomes">What came of the procedures.</param>
    /// <param name="factsOf">The machines without errors: where one has some, what became of its procedures says nothing.</param>
    /// <param name="judge">Judges families that are new or changed.</param>
    public IEnumerable<Finding> Judge(
        IReadOnlyList<ProcedureOutcome> outcomes,
        IReadOnlyDictionary<Machine, JudgedMachine> factsOf,
        Func<IReadOnlyList<ProcedureFamily>, ImmutableArray<Finding>[]> judge)
    {
        var entries = new Dictionary<ProcedureOutcome, Entry>(outcomes.Count, Same);
        var order = new List<SourceSpan>();
        var dirty = new HashSet<SourceSpan>();
        var added = new List<Entry>();
        foreach (var outcome in outcomes)
        {
            if (!factsOf.TryGetValue(outcome.Procedure.Machine, out var machine))
            {
                continue;
            }

            var isKnown = _entries.Remove(outcome, out var entry);
            if (!isKnown)
            {
                added.Add(entry = Entry.Of(outcome, machine.Facts));
            }

            entry!.Place = entries.Count;
            entries.Add(outcome, entry);
            if (order.Count == 0 || order[^1] != outcome.Procedure.Declared)
            {
                order.Add(outcome.Procedure.Declared);
            }
        }

        // What is left of before is gone.
        foreach (var entry in _entries.Values)
        {
            Forget(entry, dirty);
        }

        added.ForEach(Own);
        added.ForEach(entry => Enter(entry, dirty));
        foreach (var gone in dirty.Where(_findings.ContainsKey).ToList())
        {
            _findings.Remove(gone);
        }

        _entries = entries;
        Redo(order, entries, judge);
        return order.Distinct().SelectMany(declared => _findings[declared]);
    }

    private void Redo(
        List<SourceSpan> order,
        Dictionary<ProcedureOutcome, Entry> entries,
        Func<IReadOnlyList<ProcedureFamily>, ImmutableArray<Finding>[]> judge)
    {
        SourceSpan[] open = [.. order.Distinct().Where(declared => !_findings.ContainsKey(declared))];
        if (open.Length == 0)
        {
            return;
        }

        var wanted = open.ToHashSet();
        var own = entries.Values.Where(entry => wanted.Contains(entry.Declared)).ToLookup(entry => entry.Declared);
        foreach (var entry in own.SelectMany(family => family))
        {
            Own(entry);
        }

        var findings = judge([.. open.Select(declared => Family([.. own[declared]], entries))]);
        for (var i = 0; i < open.Length; i++)
        {
            _findings.Add(open[i], findings[i]);
        }
    }

    private ProcedureFamily Family(ImmutableArray<Entry> own, Dictionary<ProcedureOutcome, Entry> entries) => new(
        [.. own.Select(entry => entry.Member)],
        [
            .. own.SelectMany(entry => entry.OwnLines)
                .Distinct()
                .SelectMany(line => _callers.TryGetValue(line, out var found) ? found.OrderBy(member => entries[member.Outcome].Place) : Enumerable.Empty<FamilyMember>())
                .Distinct<FamilyMember>(Same),
        ]);

    private void Own(Entry entry)
    {
        foreach (var line in entry.OwnLines)
        {
            _owners[line] = entry.Declared;
        }
    }

    private void Enter(Entry entry, HashSet<SourceSpan> dirty)
    {
        dirty.Add(entry.Declared);
        foreach (var line in entry.CalledLines)
        {
            if (!_callers.TryGetValue(line, out var calling))
            {
                _callers.Add(line, calling = new HashSet<FamilyMember>(Same));
            }

            calling.Add(entry.Member);
            Touch(line, dirty);
        }
    }

    private void Forget(Entry entry, HashSet<SourceSpan> dirty)
    {
        dirty.Add(entry.Declared);
        foreach (var line in entry.CalledLines)
        {
            if (_callers.TryGetValue(line, out var calling) && calling.Remove(entry.Member) && calling.Count == 0)
            {
                _callers.Remove(line);
            }

            Touch(line, dirty);
        }

        foreach (var line in entry.OwnLines)
        {
            if (_owners.TryGetValue(line, out var owner) && owner == entry.Declared)
            {
                _owners.Remove(line);
                dirty.Add(owner);
            }
        }
    }

    private void Touch(SourceSpan line, HashSet<SourceSpan> dirty)
    {
        if (_owners.TryGetValue(line, out var owner))
        {
            dirty.Add(owner);
        }
    }

    /// <summary>A member with its lines.</summary>
    /// <param name="Member">The member.</param>
    /// <param name="OwnLines">The lines of its own text that become steps.</param>
    /// <param name="CalledLines">The lines of other procedures that it brings in.</param>
    private sealed record Entry(FamilyMember Member, ImmutableArray<SourceSpan> OwnLines, ImmutableArray<SourceSpan> CalledLines)
    {
        /// <summary>Where the procedure is declared.</summary>
        public SourceSpan Declared => Member.Outcome.Procedure.Declared;

        /// <summary>Its place among all members.</summary>
        public int Place { get; set; }

        public static Entry Of(ProcedureOutcome outcome, MachineFacts facts)
        {
            var steps = outcome.Procedure.Stages.SelectMany(stage => stage.Steps).ToList();
            return new Entry(
                new FamilyMember { Outcome = outcome, Facts = facts },
                [.. steps.Select(step => step.Calls.IsEmpty ? step.Source : step.Calls[0]).Distinct()],
                outcome.IsProven
                    ? [.. steps.Where(step => !step.Calls.IsEmpty).SelectMany(step => step.Calls.Skip(1).Append(step.Source)).Distinct()]
                    : []);
        }
    }
}
