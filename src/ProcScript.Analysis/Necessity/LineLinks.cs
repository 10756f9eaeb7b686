using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Necessity;

/// <summary>
/// Which line another one leans on, read off a proven run: it does what the other needs on the way out or back, a refit rule
/// that comes with the other names it, or it loosens what the other undoes. A run is a witness, no more: a need that one line met may be met otherwise without it.
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

        foreach (var (loosened, undone) in units.LoosenedFirst)
        {
            Add(undone, loosened);
        }
    }

    /// <summary>Pairs of lines that lean on each other.</summary>
    public IEnumerable<(int From, int To)> All => _links;

    /// <summary>The lines that nothing wanted leans on, not even through others.</summary>
    public HashSet<int> Idle()
    {
        var next = new NumberedGroups<(int From, int To)>(_units.Count, [.. _links], link => link.From);
        var needed = new HashSet<int>(_wanted);
        var open = new Stack<int>(needed);
        while (open.TryPop(out var unit))
        {
            foreach (var (_, other) in next[unit])
            {
                if (needed.Add(other))
                {
                    open.Push(other);
                }
            }
        }

        return [.. Enumerable.Range(0, _units.Count).Where(unit => !needed.Contains(unit))];
    }

    private void Read(StripRun strip, RefitRun refit)
    {
        int[] lineOf = [.. strip.Actions.Select(_units.Of)];
        foreach (var action in strip.Actions)
        {
            Lean(lineOf[action.Number], action.Needs, lineOf);
        }

        foreach (var action in refit.Actions)
        {
            switch (action.Origin)
            {
                case InverseOf inverse:
                    Lean(lineOf[inverse.Action.Number], action.Needs, lineOf);
                    break;
                case Tightened tightened:
                    Lean(lineOf[tightened.Undo.Number], action.Needs, lineOf);
                    break;
                case RuledCheck check:
                    Lean(_units.Of(check.Rule), action.Needs, lineOf);
                    break;
                case TestStep test:
                    Lean(_units.Of(test.Rule), action.Needs, lineOf);
                    break;
            }
        }

        foreach (var rule in strip.Procedure.Rules)
        {
            foreach (var anchor in Anchors(rule))
            {
                foreach (var action in refit.Actions)
                {
                    if (action.Origin is InverseOf inverse && IsNamedBy(anchor, inverse.Action))
                    {
                        Add(_units.Of(rule), lineOf[inverse.Action.Number]);
                    }
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

    private void Lean(int line, ImmutableArray<MetNeed> needs, int[] lineOf)
    {
        foreach (var need in needs)
        {
            if (need.MetBy >= 0 && need.MetBy < lineOf.Length)
            {
                Add(line, lineOf[need.MetBy]);
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
            PlacedRule placed => [placed.Before, placed.After],
            OpenRule open => [open.Action],
            SnugRule snug => [.. snug.Joints],
            _ => [],
        };
        return anchors.OfType<RefitAnchor>();
    }

    private static bool IsNamedBy(RefitAnchor anchor, PerformedAction action) =>
        action.Target == anchor.Target
        && ActionTable.Row(action.Verb).Inverse == (anchor.Verb == Verb.Snug ? Verb.Fasten : anchor.Verb)
        && (anchor.Position < 0 || anchor.Position == action.PositionBefore);
}
