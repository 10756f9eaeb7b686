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

    private readonly Dictionary<SourceSpan, HashSet<Entry>> _callers = [];
    private readonly Dictionary<SourceSpan, SourceSpan> _owners = [];
    private readonly Dictionary<SourceSpan, List<Entry>> _families = [];
    private readonly Dictionary<SourceSpan, ImmutableArray<Finding>> _told = [];
    private readonly HashSet<SourceSpan> _open = [];
    private Entry?[] _entries = [];

    /// <summary>What the rules have to say of every family, in the order of the procedures.</summary>
    /// <param name="outcomes">What came of the procedures.</param>
    /// <param name="factsOf">The machines without errors: where one has some, what became of its procedures says nothing.</param>
    /// <param name="judge">Judges families that are new or changed.</param>
    public IEnumerable<Finding> Judge(
        IReadOnlyList<ProcedureOutcome> outcomes,
        IReadOnlyDictionary<Machine, JudgedMachine> factsOf,
        Func<IReadOnlyList<ProcedureFamily>, ImmutableArray<Finding>[]> judge)
    {
        var entries = new Entry?[outcomes.Count];
        var moved = new List<int>();
        for (var place = 0; place < entries.Length; place++)
        {
            if (place < _entries.Length && _entries[place] is { } same && ReferenceEquals(same.Member.Outcome, outcomes[place]))
            {
                entries[place] = same;
                _entries[place] = null;
            }
            else
            {
                moved.Add(place);
            }
        }

        var added = new List<Entry>();
        var left = _entries.OfType<Entry>().ToDictionary<Entry, object>(entry => entry.Member.Outcome, Same);
        foreach (var place in moved)
        {
            if (left.Remove(outcomes[place], out var entry))
            {
                entry.Place = place;
                entries[place] = entry;
            }
            else if (factsOf.TryGetValue(outcomes[place].Procedure.Machine, out var machine))
            {
                added.Add(entries[place] = Entry.Of(outcomes[place], machine.Facts, place));
            }
        }

        // What is left of before is gone.
        foreach (var entry in left.Values)
        {
            Forget(entry);
        }

        _entries = entries;
        return Judge(added, judge);
    }

    private IEnumerable<Finding> Judge(List<Entry> added, Func<IReadOnlyList<ProcedureFamily>, ImmutableArray<Finding>[]> judge)
    {
        added.ForEach(Join);
        added.ForEach(Own);
        added.ForEach(Enter);
        SourceSpan[] open = [.. _open.Where(_families.ContainsKey).OrderBy(PlaceOf)];
        foreach (var entry in open.SelectMany(declared => _families[declared]))
        {
            Own(entry);
        }

        var findings = open.Length == 0 ? [] : judge([.. open.Select(declared => Family([.. _families[declared].OrderBy(entry => entry.Place)]))]);
        foreach (var declared in _open)
        {
            _told.Remove(declared);
        }

        for (var i = 0; i < open.Length; i++)
        {
            if (!findings[i].IsEmpty)
            {
                _told.Add(open[i], findings[i]);
            }
        }

        _open.Clear();
        return _told.Keys.OrderBy(PlaceOf).SelectMany(declared => _told[declared]);
    }

    private int PlaceOf(SourceSpan declared) => _families[declared].Min(entry => entry.Place);

    private void Join(Entry entry)
    {
        if (!_families.TryGetValue(entry.Declared, out var family))
        {
            _families.Add(entry.Declared, family = []);
        }

        family.Add(entry);
    }

    private ProcedureFamily Family(ImmutableArray<Entry> own) => new(
        [.. own.Select(entry => entry.Member)],
        [
            .. own.SelectMany(entry => entry.OwnLines)
                .Distinct()
                .SelectMany(line => _callers.TryGetValue(line, out var found) ? found.OrderBy(caller => caller.Place).Select(caller => caller.Member) : [])
                .Distinct<FamilyMember>(Same),
        ]);

    private void Own(Entry entry)
    {
        foreach (var line in entry.OwnLines)
        {
            _owners[line] = entry.Declared;
        }
    }

    private void Enter(Entry entry)
    {
        _open.Add(entry.Declared);
        foreach (var line in entry.CalledLines)
        {
            if (!_callers.TryGetValue(line, out var calling))
            {
                _callers.Add(line, calling = new HashSet<Entry>(Same));
            }

            calling.Add(entry);
            Touch(line);
        }
    }

    private void Forget(Entry entry)
    {
        _open.Add(entry.Declared);
        if (_families[entry.Declared] is var family && family.Remove(entry) && family.Count == 0)
        {
            _families.Remove(entry.Declared);
        }

        foreach (var line in entry.CalledLines)
        {
            if (_callers.TryGetValue(line, out var calling) && calling.Remove(entry) && calling.Count == 0)
            {
                _callers.Remove(line);
            }

            Touch(line);
        }

        foreach (var line in entry.OwnLines)
        {
            if (_owners.TryGetValue(line, out var owner) && owner == entry.Declared)
            {
                _owners.Remove(line);
                _open.Add(owner);
            }
        }
    }

    private void Touch(SourceSpan line)
    {
        if (_owners.TryGetValue(line, out var owner))
        {
            _open.Add(owner);
        }
    }

    /// <summary>A member with its lines.</summary>
    private sealed class Entry(FamilyMember member, ImmutableArray<SourceSpan> ownLines, ImmutableArray<SourceSpan> calledLines)
    {
        /// <summary>The member.</summary>
        public FamilyMember Member => member;

        /// <summary>The lines of its own text that become steps.</summary>
        public ImmutableArray<SourceSpan> OwnLines => ownLines;

        /// <summary>The lines of other procedures that it brings in.</summary>
        public ImmutableArray<SourceSpan> CalledLines => calledLines;

        /// <summary>Where the procedure is declared.</summary>
        public SourceSpan Declared => member.Outcome.Procedure.Declared;

        /// <summary>Its place among all members.</summary>
        public int Place { get; set; }

        public static Entry Of(ProcedureOutcome outcome, MachineFacts facts, int place)
        {
            var steps = outcome.Procedure.Stages.SelectMany(stage => stage.Steps).ToList();
            return new Entry(
                new FamilyMember { Outcome = outcome, Facts = facts },
                [.. steps.Select(step => step.Calls.IsEmpty ? step.Source : step.Calls[0]).Distinct()],
                outcome.IsProven
                    ? [.. steps.Where(step => !step.Calls.IsEmpty).SelectMany(step => step.Calls.Skip(1).Append(step.Source)).Distinct()]
                    : [])
            {
                Place = place,
            };
        }
    }
}
