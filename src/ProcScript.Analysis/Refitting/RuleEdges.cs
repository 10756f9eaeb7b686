using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Refitting;

/// <summary>What the author's refit rules say about the order, as edges between the actions of the refit.</summary>
internal sealed class RuleEdges
{
    private readonly StripRun _strip;
    private readonly List<ActionDraft> _drafts;
    private readonly List<OrderEdge> _edges = [];
    private readonly List<RefitFailure> _failures = [];

    /// <summary>Reads the rules of a procedure against its refit.</summary>
    public RuleEdges(StripRun strip, List<ActionDraft> drafts)
    {
        _strip = strip;
        _drafts = drafts;
        var placed = new Dictionary<PlacedRule, int>(ReferenceEqualityComparer.Instance);
        for (var i = 0; i < drafts.Count; i++)
        {
            PlacedRule? rule = drafts[i].Origin switch
            {
                RuledCheck check => check.Rule,
                RuledTest test => test.Rule,
                Retorqued retorqued => retorqued.Rule,
                _ => null,
            };
            if (rule is not null)
            {
                placed.Add(rule, i);
            }
        }

        foreach (var rule in strip.Procedure.Rules)
        {
            switch (rule)
            {
                case OrderRule order:
                    Add(Find(order.Earlier)?.Last, Find(order.Later)?.First, rule);
                    break;
                case SnugRule snug:
                    AddGroup(snug);
                    break;
                case FollowUpRule due:
                    Require(due.Target);
                    break;
                case RetorqueRule retorque when !Require(retorque.Target):
                    break;
                case PlacedRule own:
                    Add(Find(own.After)?.Last, placed[own], rule);
                    Add(placed[own], Find(own.Before)?.First, rule);
                    break;
                case OpenRule open:
                    Find(open.Action);
                    break;
            }
        }
    }

    /// <summary>The edges.</summary>
    public List<OrderEdge> Edges => _edges;

    /// <summary>What is wrong with the rules themselves.</summary>
    public IReadOnlyList<RefitFailure> Failures => _failures;

    private void Add(int? earlier, int? later, RefitRule rule)
    {
        // Who snugs a joint and orders its torque after its fastening says what is so anyway.
        if (earlier is { } first && later is { } next && (first != next || rule is not OrderRule { Earlier.Verb: Verb.Fasten, Later.Verb: Verb.Tighten }))
        {
            _edges.Add(new OrderEdge(first, next, new Ruled(rule)));
        }
    }

    /// <summary>All that a rule names is in before any of it gets its torque.</summary>
    private void AddGroup(SnugRule rule)
    {
        var joints = rule.Joints.Where(joint => Find(joint) is not null).Select(joint => joint.Target).ToHashSet();
        for (var i = 0; i < _drafts.Count; i++)
        {
            for (var j = 0; j < _drafts.Count; j++)
            {
                if (IsHalf(i, Verb.Snug) && IsHalf(j, Verb.Tighten) && _drafts[i].Request.Target != _drafts[j].Request.Target)
                {
                    _edges.Add(new OrderEdge(i, j, new Ruled(rule)));
                }
            }
        }

        bool IsHalf(int draft, Verb verb) => _drafts[draft].Request is var request && request.Verb == verb && joints.Contains(request.Target!);
    }

    /// <summary>Whether a joint can get its torque once more; where it cannot, that is noted.</summary>
    private bool Require(RefitAnchor anchor)
    {
        if (Why(anchor) is var why && why != NoAction.NothingToUndo)
        {
            _failures.Add(new RuleWithoutAction(anchor, why));
            return false;
        }

        return true;
    }

    /// <summary>The places of an action that a rule names; null where there is none, which is noted.</summary>
    private (int First, int Last)? Find(RefitAnchor? anchor)
    {
        if (anchor is null)
        {
            return null;
        }

        (int First, int Last)? place = null;
        for (var i = 0; i < _drafts.Count; i++)
        {
            if (_drafts[i] is { Origin: InverseOf or PropAgain or Tightened, Request: var request } && request.IsNamedBy(anchor))
            {
                place = (place?.First ?? i, i);
            }
        }

        if (place is not null)
        {
            return place;
        }

        if (LeftOut(anchor) is { } skipped)
        {
            // What was done instead of it is what the rule means; where the machine came in so, there is nothing to put in order.
            return Undoing(skipped.DoneBy);
        }

        _failures.Add(
            !ActionTable.Row(anchor.Verb).Phase.HasFlag(ActionPhase.Refit) && !anchor.Target.IsTemporary
                ? new StripVerbInRule(anchor)
                : new RuleWithoutAction(anchor, Why(anchor)));
        return null;
    }

    /// <summary>The step that was left out because it was done already, and of which the anchor names the inverse; null where there is none.</summary>
    private SkippedStep? LeftOut(RefitAnchor anchor) => _strip.Skipped.FirstOrDefault(skipped =>
        skipped.Step.Target == anchor.Target && ActionTable.Row(skipped.Step.Verb).Inverse == anchor.Verb);

    private (int First, int Last)? Undoing(int action)
    {
        var index = action < 0 ? -1 : _drafts.FindIndex(draft => draft.Origin is InverseOf inverse && inverse.Action.Number == action);
        return index < 0 ? null : (index, index);
    }

    private NoAction Why(RefitAnchor anchor) => anchor switch
    {
        _ when !ActionTable.Row(anchor.Verb).Suits(anchor.Target) => NoAction.WrongVerb,
        _ when _strip.Discarded.Contains(anchor.Target) || InverseList.LostEnd(anchor.Target, _strip) is not null => NoAction.Discarded,
        { Verb: Verb.Snug or Verb.Tighten } when _drafts.Exists(draft => draft.Request.Verb == Verb.Fasten && draft.Request.Target == anchor.Target) => NoAction.NotSnug,
        _ => NoAction.NothingToUndo,
    };
}
