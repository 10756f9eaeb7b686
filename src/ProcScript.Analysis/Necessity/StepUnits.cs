using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Necessity;

/// <summary>
/// The lines of a procedure that could be taken out one by one: a step, in every pass of its loops, or a <c>do</c> with all that it
/// brings. Every variant, every argument and every caller has the same lines.
/// </summary>
internal sealed class StepUnits
{
    private readonly Dictionary<SourceSpan, int> _units = new(new ByPlace());
    private readonly List<SourceSpan> _lines = [];
    private readonly List<bool> _isWanted = [];
    private readonly HashSet<(int Loosened, int Undone)> _loosenedFirst = [];

    /// <summary>Finds the lines of a procedure, in the order in which they are first performed.</summary>
    public StepUnits(ProcedureFamily family)
    {
        foreach (var procedure in family.Own.Select(member => member.Outcome.Procedure))
        {
            var goals = procedure.Goals.Select(Meaning).ToHashSet();
            foreach (var step in procedure.Stages.SelectMany(stage => stage.Steps).Concat(procedure.Work))
            {
                var line = step.Calls.IsEmpty ? step.Source : step.Calls[0];
                if (!_units.TryGetValue(line, out var unit))
                {
                    _units[line] = unit = _lines.Count;
                    _lines.Add(line);
                    _isWanted.Add(false);
                }

                var row = ActionTable.Row(step.Verb);
                _isWanted[unit] |= row.IsPrecaution
                    || step.WhereNeeded is not null
                    || !row.Phase.HasFlag(ActionPhase.Strip)
                    || step.Target is { IsTemporary: true }
                    || goals.Contains(Meaning(step.Verb, step.Target));
            }
        }

        foreach (var strip in family.All.Select(member => member.Outcome.Strip!))
        {
            var undone = strip.Actions.Where(action => action.Verb == Verb.Undo).ToLookup(action => action.Target);
            _loosenedFirst.UnionWith(
                from loosened in strip.Actions
                where loosened.Verb == Verb.Loosen && Of(loosened) >= 0
                from action in undone[loosened.Target]
                where Of(action) != Of(loosened)
                select (Of(loosened), Of(action)));
        }
    }

    /// <summary>
    /// Lines that loosen what another line undoes, with that one (-1 where it stands in another procedure). To loosen all before the first comes
    /// off is good practice: such a line goes with the other one or not at all.
    /// </summary>
    public IEnumerable<(int Loosened, int Undone)> LoosenedFirst => _loosenedFirst;

    /// <summary>How many there are.</summary>
    public int Count => _lines.Count;

    /// <summary>Where a line stands.</summary>
    public SourceSpan Line(int unit) => _lines[unit];

    /// <summary>
    /// Whether the author asks for it as such: it does work, discards something, keeps people safe, is about what is temporary, or is what the
    /// procedure is for; or says itself that it may have nothing to do. Whoever
    /// writes <c>clean</c> or <c>check</c> wants that done, goal or not.
    /// </summary>
    public bool IsWanted(int unit) => _isWanted[unit];

    /// <summary>The line that a step comes from; -1 where that is a line of another procedure.</summary>
    public int Of(Step step) => Of(step.Calls) is >= 0 and var unit ? unit : _units.GetValueOrDefault(step.Source, -1);

    /// <summary>The line that an action of a strip comes from; -1 where that is a line of another procedure.</summary>
    public int Of(PerformedAction action) => action.Origin switch
    {
        WrittenStep written => Of(written.Step),
        ExpandedStep expanded => Of(expanded.Step),
        InsertedCap inserted => Of(inserted.Step),
        _ => -1,
    };

    /// <summary>The call that brings a rule in; -1 where the rule stays whatever line goes.</summary>
    public int Of(RefitRule rule) => Of(rule.Calls);

    private int Of(ImmutableArray<SourceSpan> calls)
    {
        foreach (var call in calls)
        {
            if (_units.TryGetValue(call, out var unit))
            {
                return unit;
            }
        }

        return -1;
    }

    /// <summary>Lines are told apart by their places: to hash a path as well takes long, and nearly all lines are in one file.</summary>
    private sealed class ByPlace : IEqualityComparer<SourceSpan>
    {
        public bool Equals(SourceSpan one, SourceSpan other) => one == other;

        public int GetHashCode(SourceSpan line) => line.Span.Start;
    }

    private static NamedAction Meaning(Goal goal) => Meaning(goal.Verb, goal.Target);

    private static NamedAction Meaning(Verb verb, Model.Machines.MachineItem? target) =>
        new(verb == Verb.Strip ? Verb.Remove : verb, target);
}
