using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Necessity;

/// <summary>
/// Which line another one leans on, read off a proven run: it does what the other needs on the way out or back, or a refit rule
/// that comes with the other names it. A run is a witness, no more: a need that one line met may be met otherwise without it.
/// </summary>
internal sealed class LineLinks
{
    private readonly StepUnits _units;
    private readonly HashSet<(int From, int To)> _links = [];
    private readonly HashSet<int> _wanted = [];

    /// <summary>Reads the runs of a family.</summary>
    public LineLinks(StepUnits units, ProcedureFamily family)
    {
        _units = units;
        _wanted.UnionWith(Enumerable.Range(0, units.Count).Where(units.IsWanted));
        foreach (var outcome in family.All.Select(member => member.Outcome))
        {
            Read(outcome.Strip!, outcome.Refit!);
        }
    }

    /// <summary>Pairs of lines that lean on each other.</summary>
    public IEnumerable<(int From, int To)> All => _links;

    /// <summary>The lines that nothing wanted leans on, not even through others.</summary>
    public HashSet<int> Idle()
    {
        var next = _links.ToLookup(link => link.From, link => link.To);
        var needed = new HashSet<int>(_wanted);
        var open = new Stack<int>(needed);
        while (open.TryPop(out var unit))
        {
            foreach (var other in next[unit].Where(needed.Add))
            {
                open.Push(other);
            }
        }

        return [.. Enumerable.Range(0, _units.Count).Where(unit => !needed.Contains(unit))];
    }

    private void Read(StripRun strip, RefitRun refit)
    {
        foreach (var action in strip.Actions)
        {
            Lean(_units.Of(action), action.Needs, strip);
        }

        var inverses = new Dictionary<int, PerformedAction>();
        foreach (var action in refit.Actions)
        {
            switch (action.Origin)
            {
                case InverseOf inverse:
                    inverses.Add(action.Number, inverse.Action);
                    Lean(_units.Of(inverse.Action), action.Needs, strip);
                    break;
                case RuledCheck check:
                    Lean(_units.Of(check.Rule), action.Needs, strip);
                    break;
            }
        }

        foreach (var rule in strip.Procedure.Rules)
        {
            foreach (var anchor in Anchors(rule))
            {
                foreach (var named in inverses.Values.Where(action => IsNamedBy(anchor, action)))
                {
                    Add(_units.Of(rule), _units.Of(named));
                }
            }
        }

        var last = strip.Discards.IsEmpty ? null : strip.LastChanges();
        foreach (var discard in strip.Discards)
        {
            if (last!.TryGetValue(discard.Need.Variable, out var off))
            {
                Add(_units.Of(discard.Step), _units.Of(off));
            }
        }
    }

    private void Lean(int unit, IEnumerable<MetNeed> needs, StripRun strip)
    {
        foreach (var need in needs)
        {
            if (need.MetBy >= 0 && need.MetBy < strip.Actions.Length)
            {
                Add(unit, _units.Of(strip.Actions[need.MetBy]));
            }
        }
    }

    /// <summary>What a line of another procedure leans on is wanted, for that one is judged by itself.</summary>
    private void Add(int from, int to)
    {
        if (to >= 0 && from < 0)
        {
            _wanted.Add(to);
        }
        else if (to >= 0 && from != to)
        {
            _links.Add((from, to));
        }
    }

    private static IEnumerable<RefitAnchor> Anchors(RefitRule rule)
    {
        RefitAnchor?[] anchors = rule switch
        {
            OrderRule order => [order.Earlier, order.Later],
            CheckRule check => [check.Before, check.After],
            _ => [],
        };
        return anchors.OfType<RefitAnchor>();
    }

    private static bool IsNamedBy(RefitAnchor anchor, PerformedAction action) =>
        action.Target == anchor.Target && ActionTable.Row(action.Verb).Inverse == anchor.Verb;
}
